import { type CarryGround, carry, ropeBelowEdge, shownMinutes, slowness } from '../../rigging/index.ts';
import type { Way, WayQuestion } from './way-types.ts';

/** Carrying the litter up on one belay line, or null where the ground does not allow it. More patients mean more cycles. */
export function carryWay(question: WayQuestion, anchorRunM: number): Way | null {
  const { slope, arrivals, kits, conditions, rates, patients } = question;
  const ground: CarryGround = {
    planLow: slope.planLow,
    step: slope.step,
    lipChangeDeg: slope.lipChangeDeg,
    angleHighDeg: slope.angleHighDeg,
    groundLengthM: slope.groundM,
  };
  const found = carry(ground, arrivals, conditions, rates);
  if (!found) return null;
  const lineM = ropeBelowEdge(slope.ropeLineM, slope.groundM, rates) + anchorRunM + rates.tailsM;
  const ropeAtMin = ropeArrival(lineM, kits);
  const ready = Math.max(rates.carryReadyMin * slowness(conditions, rates), found.atMin ?? 0);
  const total =
    found.minutes === null || ropeAtMin === null
      ? null
      : Math.max(ready, ropeAtMin) + patients * (found.minutes - ready);
  return {
    kind: 'carry',
    ropeM: lineM,
    people: { count: found.people, atMin: found.atMin },
    minutes: total,
    shown: total === null ? null : shownMinutes(total, rates.minutesSpread),
    meets: 'the ambulance on the road above',
    bearers: found.bearers,
    endsAtVehicle: true,
    allowed: total !== null,
    why: [
      `${found.bearers === 4 ? 'Four' : 'Six'} carry, one belay line on one anchor, no haul.`,
      ...(ropeAtMin === null ? ['No single rope that comes reaches.'] : []),
      ...(found.atMin === null ? ['Too few people come to carry.'] : []),
    ],
  };
}

/** Minute at which a rope of at least a length is there; null where none comes. */
function ropeArrival(lineM: number, kits: WayQuestion['kits']): number | null {
  const long = kits.filter(({ ropesM }) => ropesM.some((ropeM) => ropeM + 1e-9 >= lineM));
  return long.length > 0 ? Math.min(...long.map(({ atMin }) => atMin)) : null;
}
