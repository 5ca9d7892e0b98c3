/** A hollow in a row of heights: first and last index that lie in it, its depth, and how many lie below half of that. */
export interface Pit {
  readonly from: number;
  readonly to: number;
  readonly depthM: number;
  readonly halfWidth: number;
}

/**
 * Pits up to `longest` values long: the row is closed over one value more (grey-scale closing [source: serra1982]); a pit is a run
 * that was raised by more than `footM`. Pits that run out of the row are left out. Heights may be NaN and then end a pit.
 */
export function pitsOf(heights: Float64Array, longest: number, footM: number): Pit[] {
  const filled = closed(heights, longest + 1);
  const pits: Pit[] = [];
  const count = heights.length;
  for (let i = 0; i < count; i++) {
    if (!(filled[i] - heights[i] > footM)) continue;
    const from = i;
    let depthM = 0;
    while (i < count && filled[i] - heights[i] > footM) {
      depthM = Math.max(depthM, filled[i] - heights[i]);
      i++;
    }
    if (from === 0 || i === count) continue;
    let halfWidth = 0;
    for (let k = from; k < i; k++) if (filled[k] - heights[k] > depthM / 2) halfWidth++;
    pits.push({ from, to: i - 1, depthM, halfWidth });
  }
  return pits;
}

/** Raises pits of at least `depthM` to a straight line between their rims, in place. */
export function fillPits(heights: Float64Array, longest: number, footM: number, depthM: number): void {
  for (const { from, to, depthM: depth } of pitsOf(heights, longest, footM)) {
    if (depth < depthM) continue;
    const a = heights[from - 1];
    const b = heights[to + 1];
    for (let k = from; k <= to; k++) {
      const straight = a + ((b - a) * (k - from + 1)) / (to - from + 2);
      if (straight > heights[k]) heights[k] = straight;
    }
  }
}

/** Grey-scale closing with a flat element of `size` values; NaN counts as no ground. */
function closed(heights: Float64Array, size: number): Float64Array {
  return windowMost(windowMost(heights, size, 1), size, -1);
}

/** Largest value of the window that starts at i (sign 1), or smallest of the window that ends there (sign −1). */
function windowMost(values: Float64Array, size: number, sign: 1 | -1): Float64Array {
  const count = values.length;
  const out = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let most = Number.NEGATIVE_INFINITY;
    for (let k = 0; k < size; k++) {
      const j = i + sign * k;
      if (j < 0 || j >= count) break;
      const v = sign * values[j];
      if (v > most) most = v;
    }
    out[i] = most === Number.NEGATIVE_INFINITY ? Number.NaN : sign * most;
  }
  return out;
}
