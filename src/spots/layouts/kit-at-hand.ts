import { type Kit, ropeLengths, type UnitArrival } from '../../book/index.ts';
import type { GearRatings, KitArrival, TimeSettings } from '../../rigging/index.ts';

/** Ropes under this are not counted: general-use class, kilonewtons (recalled) [source: nfpa-1983]. */
const COUNTED_ROPE_KN = 40;

/** Ropes that count, by the unit that brings them, in order of arrival. */
export function kitArrivals(arrivals: readonly UnitArrival[], kits: readonly Kit[]): KitArrival[] {
  return [...arrivals]
    .sort((a, b) => a.atMin - b.atMin)
    .map(({ unit, atMin, tier, kitIds }) => ({
      ...{ unit, atMin, tier },
      ropesM: kitIds.flatMap((id) =>
        kits.filter((kit) => kit.id === id).flatMap((kit) => ropeLengths(kit, COUNTED_ROPE_KN)),
      ),
    }))
    .filter(({ ropesM }) => ropesM.length > 0);
}

/** Least rated strengths of what the kits on their way hold; null where one is not stated or not there. */
export function gearRatings(arrivals: readonly UnitArrival[], kits: readonly Kit[]): GearRatings {
  const coming = new Set(arrivals.flatMap(({ kitIds }) => kitIds));
  const items = kits.filter(({ id }) => coming.has(id)).flatMap((kit) => kit.items);
  const least = (kind: string): number | null => {
    const rated = items.filter((item) => item.kind === kind).map(({ ratedKn }) => ratedKn);
    return rated.length === 0 || rated.includes(null) ? null : Math.min(...(rated as number[]));
  };
  return { ropeKn: COUNTED_ROPE_KN, pulleyKn: least('pulley'), deviceKn: least('descent device') };
}

/**
 * The latest arrival whose kit is there before the ropes are rigged, minutes. Counted in fair weather, so that slower
 * rigging never brings more rope to hand.
 *
 * @param apparatusAtMin arrival of the last apparatus that the layout uses
 */
export function kitByMin(kind: 'straight' | 'turned', apparatusAtMin: number, settings: TimeSettings): number {
  const rig = kind === 'straight' ? settings.rigStraightMin : settings.rigTurnedMin;
  return Math.max(0, settings.closureMin + rig - settings.standMin, apparatusAtMin);
}
