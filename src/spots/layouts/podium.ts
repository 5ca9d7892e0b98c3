import type { Candidate } from './candidate.ts';
import { compareRank, type RankKey } from './rank.ts';

/** What a search keeps of each kind and direction: the first by rank, and those with fewest lanes and fewest resets. */
const ORDERS = [
  (a: RankKey, b: RankKey): number => compareRank(a, b).order,
  (a: RankKey, b: RankKey): number =>
    unmet(a) - unmet(b) || impractical(a) - impractical(b) || a.lanes - b.lanes || compareRank(a, b).order,
  (a: RankKey, b: RankKey): number => a.resets - b.resets || compareRank(a, b).order,
] as const;

const unmet = (key: RankKey): number => (key.verdict === 'no' ? 1 : 0);
const impractical = (key: RankKey): number => (key.practical ? 0 : 1);

/** The best candidates of one kind and direction, each first in one order. */
export class Podium {
  readonly #first: (Candidate | null)[] = ORDERS.map(() => null);

  /** True where a key could still take a place; `best` is what the candidate could at most come to. */
  admits(best: RankKey): boolean {
    return ORDERS.some((order, k) => {
      const held = this.#first[k];
      return held === null || order(best, held.key) <= 0;
    });
  }

  offer(candidate: Candidate): void {
    ORDERS.forEach((order, k) => {
      const held = this.#first[k];
      if (held === null || (order(candidate.key, held.key) || tieBreak(candidate, held)) < 0)
        this.#first[k] = candidate;
    });
  }

  kept(): Candidate[] {
    return [...new Set(this.#first.filter((one) => one !== null))];
  }
}

/** Where no step of the rank parts two: fewer things to check, the shorter field, then the ids. */
export function tieBreak(a: Candidate, b: Candidate): number {
  return checks(a) - checks(b) || a.fieldM - b.fieldM || (idsOf(a) < idsOf(b) ? -1 : idsOf(a) > idsOf(b) ? 1 : 0);
}

const checks = ({ anchor, turn }: Candidate): number =>
  (anchor.spot?.problems.length ?? 0) + (turn?.tie.spot?.problems.length ?? 0);

const idsOf = ({ anchor, turn, belay }: Candidate): string => `${turn?.tie.id ?? ''}|${anchor.id}|${belay.tie.id}`;
