import { type AdvantageName, idealAdvantage } from './advantage.ts';
import { againstCapacity, type ForceCheck } from './force-check.ts';
import type { Haul } from './haul.ts';
import type { ForceSettings } from './haul-forces.ts';
import type { TeamSettings } from './team.ts';

/** Rated strengths of the gear at hand, kilonewtons; null where not stated. */
export interface GearRatings {
  readonly ropeKn: number | null;
  readonly pulleyKn: number | null;
  readonly deviceKn: number | null;
}

export interface GearSettings extends ForceSettings, TeamSettings {
  /** Share of a rope's strength that a knot keeps. */
  readonly knotShare: number;
}

const nowhere = { x: 0, y: 0 };

/**
 * Haul grab and gear against their ratings. None of these refuses a layout: what falls short is a "judge on site" (two grabs,
 * one attendant fewer, a second pulley), because which factor gear needs is the department's to say.
 *
 * @param turnKn resultant on the change of direction while hauling; null in a straight haul
 */
export function gearChecks(
  name: AdvantageName,
  haul: Pick<Haul, 'tensionKn' | 'farKn' | 'team'>,
  turnKn: number | null,
  ratings: GearRatings,
  settings: GearSettings,
): ForceCheck[] {
  const { held, belay } = haul.tensionKn;
  const knotted = ratings.ropeKn === null ? null : ratings.ropeKn * settings.knotShare;
  const check = (at: string, kn: number, capacityKn: number | null, required: number, rule: string): ForceCheck =>
    softened(againstCapacity({ at, kind: 'part', rule }, { kn, toward: nowhere }, capacityKn, required));
  const jerkKn = haul.team.walking * settings.haulerJerkKn * idealAdvantage(name);
  const grab = { at: 'haul grab', kind: 'grab', rule: 'slip ÷ (team × jerk × ideal advantage)' } as const;
  const checks = [
    softened(againstCapacity(grab, { kn: jerkKn, toward: nowhere }, settings.grabSlipKn, 1)),
    check('rope, held', Math.max(held, belay), knotted, settings.heldFactor, 'rope × knot ÷ force'),
    check('rope, hauling', haul.farKn.hanging, knotted, settings.haulingFactor, 'rope × knot ÷ force'),
    check('descent device', held, ratings.deviceKn, settings.heldFactor, 'rating ÷ force'),
  ];
  if (turnKn !== null) {
    checks.push(check('pulley at the turn', turnKn, ratings.pulleyKn, settings.haulingFactor, 'rating ÷ resultant'));
  }
  return checks;
}

const softened = (check: ForceCheck): ForceCheck => (check.ok === 'no' ? { ...check, ok: 'judge on site' } : check);
