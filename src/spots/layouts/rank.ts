import { type AdvantageName, advantageNames, type Verdict } from '../../rigging/index.ts';

/** What layouts are ranked by, one value a step; the smaller is the better one. */
export interface RankKey {
  readonly verdict: Verdict;
  /** Up to the most resets that the book calls practical. */
  readonly practical: boolean;
  /** 0 kit at hand when rigging ends, 1 fits by the first alarm, 2 by mutual aid, else 3 + whole metres short. */
  readonly kit: number;
  /** The least crew to raise is there by the first alarm. */
  readonly crewByAlarm: boolean;
  readonly advantage: AdvantageName;
  readonly resets: number;
  readonly lanes: number;
  /** Grade of the road at the site, as a share; over 3 % the hold factor counts. */
  readonly grade: number;
  readonly leastHoldFactor: number | null;
  readonly straight: boolean;
  /** Of the way past the edge that the haul does not bring. */
  readonly liftedByHandM: number;
  /** Infinite where crew or kit never come. */
  readonly minutes: number;
}

/** The steps of the rank in their order. */
const rankSteps = [
  'factors',
  'practical',
  'kit',
  'crew',
  'advantage',
  'resets',
  'lanes',
  'hold',
  'straight',
  'minutes',
  'hand lift',
] as const;
export type RankStep = (typeof rankSteps)[number];

/** Over this the hold factor counts, and it counts by tenths, so that a trifle turns nothing round. */
const GRADE_COUNTS = 0.03;
const FACTOR_TENTHS = 10;

/** True on a grade, as a share, on which the hold factor counts. */
export const holdCounts = (grade: number): boolean => grade > GRADE_COUNTS;

/**
 * Orders two layouts: under 0 where `a` ranks before `b`, 0 where no step parts them; with the step that decided. Every step
 * but the minutes is whole-numbered or a yes or no, so that nothing turns on a percentage (common practice, no source).
 */
export function compareRank(a: RankKey, b: RankKey): { readonly order: number; readonly step: RankStep | null } {
  for (const step of rankSteps) {
    const order = stepValue(step, a) - stepValue(step, b);
    if (order !== 0 && !Number.isNaN(order)) return { order, step };
  }
  return { order: 0, step: null };
}

const verdicts: readonly Verdict[] = ['yes', 'judge on site', 'no'];

function stepValue(step: RankStep, key: RankKey): number {
  switch (step) {
    case 'factors':
      return verdicts.indexOf(key.verdict);
    case 'practical':
      return key.practical ? 0 : 1;
    case 'kit':
      return key.kit;
    case 'crew':
      return key.crewByAlarm ? 0 : 1;
    case 'advantage':
      return advantageNames.indexOf(key.advantage);
    case 'resets':
      return resetClass(key.resets);
    case 'lanes':
      return key.lanes;
    case 'hold':
      return holdCounts(key.grade) ? -Math.floor(FACTOR_TENTHS * Math.min(key.leastHoldFactor ?? 100, 100)) : 0;
    case 'straight':
      return key.straight ? 0 : 1;
    case 'hand lift':
      return Math.ceil(key.liftedByHandM - 1e-9);
    case 'minutes':
      return key.minutes;
  }
}

/** Classes of resets: 0 to 3, 4 to 6, 7 to 10, more. */
export const resetClass = (resets: number): number => (resets <= 3 ? 0 : resets <= 6 ? 1 : resets <= 10 ? 2 : 3);
