import type { Candidate } from './candidate.ts';
import { beforeHold, holdCounts, type RankKey, rankOrder } from './rank.ts';
import type { TiePlace } from './tie-places.ts';

/**
 * What a search keeps of each kind and direction: the first by rank, those with fewest lanes and fewest resets, and on a grade the
 * steadiest of those that lead until the hold decides.
 */
const ORDERS = [
  (a: RankKey, b: RankKey): number => rankOrder(a, b),
  (a: RankKey, b: RankKey): number =>
    unmet(a) - unmet(b) || impractical(a) - impractical(b) || a.lanes - b.lanes || rankOrder(a, b),
  (a: RankKey, b: RankKey): number => uncrewed(a) - uncrewed(b) || a.resets - b.resets || rankOrder(a, b),
  (a: RankKey, b: RankKey): number =>
    beforeHold(a, b) || (holdCounts(a.grade) ? factor(b) - factor(a) : 0) || rankOrder(a, b),
] as const;

const factor = ({ leastHoldFactor }: RankKey): number => leastHoldFactor ?? Number.MAX_VALUE;
const unmet = (key: RankKey): number => (key.verdict === 'no' ? 1 : 0);
const uncrewed = (key: RankKey): number => (key.crewByAlarm ? 0 : 1);
const impractical = (key: RankKey): number => (key.practical ? 0 : 1);

/** The best candidates of one kind and direction, each first in one order. */
export class Podium {
  readonly #first: (Candidate | null)[] = ORDERS.map(() => null);
  /** How many times a place was filled. */
  filled = 0;

  /** True where a candidate could still take a place; `best` is what its key could at most come to. */
  admits(best: RankKey, places: Places): boolean {
    for (let k = 0; k < ORDERS.length; k++) {
      const held = this.#first[k];
      if (held === null) return true;
      const order = ORDERS[k](best, held.key);
      if (order < 0 || (order === 0 && levelOrder(levelOf(places), levelOf(held)) <= 0)) return true;
    }
    return false;
  }

  offer(candidate: Candidate): void {
    ORDERS.forEach((order, k) => {
      const held = this.#first[k];
      if (held !== null && (order(candidate.key, held.key) || tieBreak(candidate, held)) >= 0) return;
      this.#first[k] = candidate;
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
interface Level {
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

const levelOf = ({ choice, base, anchor, turn, fieldM }: Places): Level => ({
  resets: choice.resets,
  team: base.byAdvantage[choice.advantage].team[choice.handTurns],
  checks: (anchor.spot?.problems.length ?? 0) + (turn?.tie.spot?.problems.length ?? 0),
  fieldM,
});

const idsOf = ({ anchor, turn, belay }: Candidate): string => `${turn?.tie.id ?? ''}|${anchor.id}|${belay.tie.id}`;
