import type { Candidate } from './candidate.ts';
import { afterHold, beforeHold, factorOfTenths, holdCounts, holdTenths, type RankKey } from './rank.ts';
import type { TiePlace } from './tie-places.ts';

/**
 * What a search keeps of each kind and direction: the first by rank, those with fewest lanes and fewest resets, and on a grade the
 * steadiest of those that lead until the hold decides. Each is an order by steps before the hold, by the hold (exact for the
 * steadiest, else as it counts), by those after it.
 */
const ORDERS: readonly { readonly before: (a: RankKey, b: RankKey) => number; readonly exact: boolean }[] = [
  { before: beforeHold, exact: false },
  {
    before: (a, b) => unmet(a) - unmet(b) || impractical(a) - impractical(b) || a.lanes - b.lanes || beforeHold(a, b),
    exact: false,
  },
  { before: (a, b) => uncrewed(a) - uncrewed(b) || a.resets - b.resets || beforeHold(a, b), exact: false },
  { before: beforeHold, exact: true },
];

type Order = (typeof ORDERS)[number];

const orderBy = ({ before, exact }: Order, a: RankKey, b: RankKey): number =>
  before(a, b) ||
  (holdCounts(a.grade) ? (exact ? factor(b) - factor(a) : tenths(b) - tenths(a)) : 0) ||
  afterHold(a, b);

const factor = ({ leastHoldFactor }: RankKey): number => leastHoldFactor ?? Number.MAX_VALUE;
const tenths = ({ grade, leastHoldFactor }: RankKey): number => holdTenths(grade, leastHoldFactor);
const unmet = (key: RankKey): number => (key.verdict === 'no' ? 1 : 0);
const uncrewed = (key: RankKey): number => (key.crewByAlarm ? 0 : 1);
const impractical = (key: RankKey): number => (key.practical ? 0 : 1);

/** The best candidates of one kind and direction, each first in one order. */
export class Podium {
  readonly #first: (Candidate | null)[] = ORDERS.map(() => null);
  /** The level of each. */
  readonly #levels: Level[] = [];
  /** How many times a place was filled. */
  filled = 0;

  /** True where a candidate could still take a place; `best` is what its key could at most come to. */
  admits(best: RankKey, level: Level): boolean {
    for (let k = 0; k < ORDERS.length; k++) {
      const held = this.#first[k];
      if (held === null) return true;
      const order = orderBy(ORDERS[k], best, held.key);
      if (order < 0 || (order === 0 && levelOrder(level, this.#levels[k]) <= 0)) return true;
    }
    return false;
  }

  /**
   * Least hold factor with which a candidate could take a place: -Infinity with any, Infinity with none. `best` is what its key could
   * at most come to, whatever factor it states.
   */
  leastFactor(best: RankKey, level: Level): number {
    let least = Number.POSITIVE_INFINITY;
    for (let k = 0; k < ORDERS.length; k++) {
      const held = this.#first[k];
      if (held === null) return Number.NEGATIVE_INFINITY;
      const before = ORDERS[k].before(best, held.key);
      if (before < 0) return Number.NEGATIVE_INFINITY;
      if (before > 0) continue;
      const levelWins = (afterHold(best, held.key) || levelOrder(level, this.#levels[k])) <= 0;
      if (!holdCounts(best.grade)) {
        if (levelWins) return Number.NEGATIVE_INFINITY;
      } else if (ORDERS[k].exact) {
        least = Math.min(least, factor(held.key) * (levelWins ? 1 : 1 + Number.EPSILON));
      } else {
        least = Math.min(least, factorOfTenths(tenths(held.key) + (levelWins ? 0 : 1)));
      }
    }
    return least;
  }

  offer(candidate: Candidate): void {
    ORDERS.forEach((order, k) => {
      const held = this.#first[k];
      if (held !== null && (orderBy(order, candidate.key, held.key) || tieBreak(candidate, held)) >= 0) return;
      this.#first[k] = candidate;
      this.#levels[k] = levelOf(candidate);
      this.filled++;
    });
  }

  kept(): Candidate[] {
    return [...new Set(this.#first.filter((one) => one !== null))];
  }

  /** First by rank, by lanes and by hold: those that a finer look may better. */
  leaders(): Candidate[] {
    const [byRank, byLanes, , steadiest] = this.#first;
    return [...new Set([byRank, byLanes, steadiest])].filter((one) => one !== null);
  }
}

/** What the level of a candidate hangs on. */
type Places = Pick<Candidate, 'choice' | 'base' | 'fieldM'> & {
  readonly anchor: Pick<TiePlace, 'spot'>;
  readonly turn: { readonly tie: Pick<TiePlace, 'spot'> } | null;
};

/** What parts two candidates that no step of the rank parts. */
export interface Level {
  readonly resets: number;
  /** Haul team. */
  readonly team: number;
  /** Things to check on the spots. */
  readonly checks: number;
  readonly fieldM: number;
}

/** Where no step of the rank parts two: fewer resets, fewer people, fewer things to check, the shorter field, then the ids. */
export const tieBreak = (a: Candidate, b: Candidate): number =>
  levelOrder(levelOf(a), levelOf(b)) || (idsOf(a) < idsOf(b) ? -1 : idsOf(a) > idsOf(b) ? 1 : 0);

const levelOrder = (a: Level, b: Level): number =>
  a.resets - b.resets || a.team - b.team || a.checks - b.checks || a.fieldM - b.fieldM;

export const levelOf = ({ choice, base, anchor, turn, fieldM }: Places): Level => ({
  resets: choice.resets,
  team: base.byAdvantage[choice.advantage].team[choice.handTurns],
  checks: (anchor.spot?.problems.length ?? 0) + (turn?.tie.spot?.problems.length ?? 0),
  fieldM,
});

const idsOf = ({ anchor, turn, belay }: Candidate): string => `${turn?.tie.id ?? ''}|${anchor.id}|${belay.tie.id}`;
