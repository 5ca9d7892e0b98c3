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
const MOST_FACTOR = 100;

/** True on a grade, as a share, on which the hold factor counts. */
export const holdCounts = (grade: number): boolean => grade > GRADE_COUNTS;

/** Least factor that counts for so many whole tenths: a hair less, so that rounding leaves nothing out. */
export const factorOfTenths = (tenths: number): number =>
  tenths > FACTOR_TENTHS * MOST_FACTOR ? Number.POSITIVE_INFINITY : (tenths / FACTOR_TENTHS) * (1 - 1e-12);

/** A least hold factor (null: nothing slides) as it counts on a grade, a share: in whole tenths; 0 where it does not count. */
export const holdTenths = (grade: number, factor: number | null): number =>
  holdCounts(grade) ? Math.floor(FACTOR_TENTHS * Math.min(factor ?? MOST_FACTOR, MOST_FACTOR)) : 0;

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

/** The order by the steps before the hold, without the step that decided: a search asks a hundred thousand times. */
export const beforeHold = (a: RankKey, b: RankKey): number =>
  VERDICTS[a.verdict] - VERDICTS[b.verdict] ||
  (a.practical ? 0 : 1) - (b.practical ? 0 : 1) ||
  a.kit - b.kit ||
  (a.crewByAlarm ? 0 : 1) - (b.crewByAlarm ? 0 : 1) ||
  (a.advantage === b.advantage ? 0 : advantageNames.indexOf(a.advantage) - advantageNames.indexOf(b.advantage)) ||
  resetClass(a.resets) - resetClass(b.resets) ||
  a.lanes - b.lanes;

/** The order by the steps after the hold. */
export const afterHold = (a: RankKey, b: RankKey): number =>
  (a.straight ? 0 : 1) - (b.straight ? 0 : 1) ||
  a.minutes - b.minutes ||
  Math.ceil(a.liftedByHandM - 1e-9) - Math.ceil(b.liftedByHandM - 1e-9) ||
  0;

const VERDICTS: Readonly<Record<Verdict, number>> = { yes: 0, 'judge on site': 1, no: 2 };

function stepValue(step: RankStep, key: RankKey): number {
  switch (step) {
    case 'factors':
      return VERDICTS[key.verdict];
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
      return -holdTenths(key.grade, key.leastHoldFactor);
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
