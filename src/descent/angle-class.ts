import type { AngleClass, AngleRule } from '../book/index.ts';

/** Shares needed to name a class, and the share of "high" from which a descent is planned as high (practice). */
const LOW_SHARE = 0.95;
const OTHER_SHARE = 0.8;
const PLAN_HIGH_SHARE = 0.1;

export interface ClassShares {
  readonly low: number;
  readonly steep: number;
  readonly high: number;
}

/** Chance of each class; `chanceFrom` tells how likely the angle is at or over a limit, so that equality goes steeper. */
export function classShares(chanceFrom: (limitDeg: number) => number, rule: AngleRule): ClassShares {
  const high = chanceFrom(rule.highMinDeg);
  const notLow = Math.max(high, chanceFrom(rule.lowMaxDeg));
  return { low: 1 - notLow, steep: notLow - high, high };
}

/** The class that the data can tell. Data that only screen never tell "low". */
export function namedClass({ low, steep, high }: ClassShares, screeningOnly: boolean): AngleClass | 'undecided' {
  if (high >= OTHER_SHARE) return 'high';
  if (steep >= OTHER_SHARE) return 'steep';
  return low >= LOW_SHARE && !screeningOnly ? 'low' : 'undecided';
}

/**
 * The class that everything downstream takes, from the worse of the runs: `mostChanceFrom` is the larger chance of both.
 * Never gentler than the named class.
 */
export function planAs(
  mostChanceFrom: (limitDeg: number) => number,
  rule: AngleRule,
  named: AngleClass | 'undecided',
  cautions: { readonly step: boolean; readonly screeningOnly: boolean },
): AngleClass {
  if (named === 'high' || cautions.step || mostChanceFrom(rule.highMinDeg) > PLAN_HIGH_SHARE) return 'high';
  const low = 1 - mostChanceFrom(rule.lowMaxDeg) >= LOW_SHARE;
  return low && named !== 'steep' && !cautions.screeningOnly ? 'low' : 'steep';
}
