import { type AdvantageName, idealAdvantage } from './advantage.ts';
import { ceilWithin, floorWithin } from './ceil-within.ts';

export interface TeamSettings {
  /** Pull of one person hauling in short pulls, kilonewtons [source: bassett-haul-systems]. */
  readonly haulerKn: number;
  /** Pull of one person sustained by grip alone, kilonewtons [source: bassett-haul-systems]. */
  readonly haulerSustainedKn: number;
  /** What one person can briefly put on the rope, kilonewtons. */
  readonly haulerJerkKn: number;
  /** Tension at which the haul grab slips, kilonewtons [source: schwartz-pulley-forces]. */
  readonly grabSlipKn: number;
  readonly smallestTeam: number;
}

/** People on the hauling rope. */
export interface HaulTeam {
  readonly walking: number;
  /** If every attendant hangs. */
  readonly allHang: number;
  /** By sustained grip, with relief, for long pulls. */
  readonly sustained: number;
  /** Hands that may be on the rope at once before they could make the haul grab slip. */
  readonly handsAtOnce: number;
  /** The team is larger than that: two grabs, or one attendant fewer. */
  readonly checkGrab: boolean;
  /** Haulers × first number of the advantage is over 18, an optional rule of the book [source: rule-of-18]. */
  readonly overRuleOf18: boolean;
}

/** Haul team from the hand pulls, kilonewtons, walking and with all hanging. */
export function haulTeam(
  name: AdvantageName,
  pullKn: { readonly walking: number; readonly hanging: number },
  settings: TeamSettings,
): HaulTeam {
  const people = (kn: number, eachKn: number): number => Math.max(settings.smallestTeam, ceilWithin(kn / eachKn));
  const walking = people(pullKn.walking, settings.haulerKn);
  const handsAtOnce = floorWithin(settings.grabSlipKn / (settings.haulerJerkKn * idealAdvantage(name)));
  return {
    walking,
    allHang: people(pullKn.hanging, settings.haulerKn),
    sustained: people(pullKn.walking, settings.haulerSustainedKn),
    handsAtOnce,
    checkGrab: walking > handsAtOnce,
    overRuleOf18: walking * Number.parseInt(name, 10) > 18,
  };
}
