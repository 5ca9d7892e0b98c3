const MOST_LANES = 3;
const COUNT = 3 * (MOST_LANES + 1);

/**
 * How well a haul must hold to take a place in a search, by its lanes and its verdict (0 met, 1 to judge, 2 unmet), as last asked.
 * Places only fill with better ones, so the bar only rises: what it refused once is refused for good, and so is what takes more lanes.
 */
export class Bar {
  /** Lanes from which on nothing takes a place, however it holds. */
  #closedFrom = Number.POSITIVE_INFINITY;
  #least: number[] | null = null;
  /** How many times places had been filled when a least factor was asked. */
  #asked: number[] | null = null;

  /** The bar as it was last asked: nothing under it takes a place. */
  atLeast(lanes: number, verdict: number): number {
    if (lanes >= this.#closedFrom) return Number.POSITIVE_INFINITY;
    return this.#least === null || lanes > MOST_LANES ? Number.NEGATIVE_INFINITY : this.#least[3 * lanes + verdict];
  }

  /** The bar now that places were filled so many times; null where that is to be asked anew. */
  least(lanes: number, verdict: number, filled: number): number | null {
    if (lanes >= this.#closedFrom) return Number.POSITIVE_INFINITY;
    if (this.#least === null || this.#asked === null || lanes > MOST_LANES) return null;
    const k = 3 * lanes + verdict;
    const closed = this.#least[k] === Number.POSITIVE_INFINITY;
    return closed || this.#asked[k] === filled ? this.#least[k] : null;
  }

  /** Remembers an answer: the least factor that takes a place, -Infinity any, Infinity none. */
  raise(lanes: number, verdict: number, least: number, filled: number): void {
    if (least === Number.POSITIVE_INFINITY && verdict === 0) this.#closedFrom = lanes;
    if (lanes > MOST_LANES) return;
    this.#least ??= new Array<number>(COUNT).fill(Number.NEGATIVE_INFINITY);
    this.#asked ??= new Array<number>(COUNT).fill(-1);
    const k = 3 * lanes + verdict;
    this.#least[k] = least;
    this.#asked[k] = filled;
  }
}
