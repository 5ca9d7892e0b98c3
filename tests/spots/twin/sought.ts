import { compareRank, type RankKey, type RankStep } from '../../../src/spots/index.ts';

/** Kept beyond every rule of the ground by what the twin finds, so that no rounding decides. */
export const SPARE = { m: 0.01, deg: 0.1 };

/** Steps of the rank after which only time and lifting by hand are left. */
const LAST: readonly (RankStep | null)[] = ['minutes', 'hand lift', null];

/** What the twin found beside the best that it was given (null: there was none). */
export class Sought {
  readonly best: RankKey | null;
  /** Pairs looked at, and keys worked out in full. */
  looked = 0;
  workedOut = 0;
  /** One that is no worse than the best through all steps but the last two. */
  level = false;
  /** One that ranks before the best by a step before those: which step, and where. */
  before: string | null = null;

  constructor(best: RankKey | null) {
    this.best = best;
  }

  offer(key: RankKey, where: () => string): void {
    if (this.best === null) {
      this.level = true;
      this.before ??= `any at all: ${told(key)} ${where()}`;
      return;
    }
    const { order, step } = compareRank(key, this.best);
    if (order <= 0 || LAST.includes(step)) this.level = true;
    if (order >= 0 || LAST.includes(step)) return;
    this.before ??= `${step}: ${told(key)} before ${told(this.best)} ${where()}`;
  }
}

export const tenthsOf = (key: RankKey): number => Math.floor(10 * Math.min(100, key.leastHoldFactor ?? 100));

const told = (key: RankKey): string =>
  `[${key.verdict}, kit ${key.kit}, crew ${key.crewByAlarm}, ${key.advantage}, ${key.resets} resets, ${key.lanes} lanes, hold ${key.leastHoldFactor?.toFixed(2)}]`;
