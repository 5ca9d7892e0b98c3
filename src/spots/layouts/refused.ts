const MOST_LANES = 7;
const COUNT = 3 * (MOST_LANES + 1);

/**
 * What took no place in a search, and what still could. Places only fill with better ones: what is refused once is refused for
 * good, and so is what takes more lanes or holds no better; what could take a place may until one is filled anew.
 */
export class Refused {
  /** Lanes from which on nothing takes a place, however it holds. */
  fromLanes = Number.POSITIVE_INFINITY;
  /** Most hold factor that was refused, then least that is open. */
  #factors: Float64Array | null = null;
  #filled = -1;

  /** Whether so many lanes with a verdict (0 met, 1 to judge, 2 unmet) and a hold factor may take a place; null unknown. */
  known(lanes: number, verdict: number, factor: number, filled: number): boolean | null {
    if (lanes >= this.fromLanes) return false;
    if (this.#factors === null || lanes > MOST_LANES) return null;
    const k = 3 * lanes + verdict;
    if (factor <= this.#factors[k]) return false;
    return filled === this.#filled && factor >= this.#factors[COUNT + k] ? true : null;
  }

  /** Remembers an answer, found when places had been filled so many times. */
  add(lanes: number, verdict: number, factor: number, filled: number, open: boolean): void {
    if (lanes > MOST_LANES) return;
    this.#factors ??= new Float64Array(2 * COUNT).fill(-1, 0, COUNT);
    const k = 3 * lanes + verdict;
    if (!open) {
      this.#factors[k] = factor;
      return;
    }
    if (filled !== this.#filled) this.#factors.fill(Number.POSITIVE_INFINITY, COUNT);
    this.#filled = filled;
    this.#factors[COUNT + k] = Math.min(this.#factors[COUNT + k], factor);
  }
}
