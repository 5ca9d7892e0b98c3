/** Least spread that a fit is weighed by, metres: below it every sample counts in full. */
const LEAST_SPREAD_M = 0.02;
/** Tukey's constant for 95 % efficiency under Gaussian error [source: beaton-tukey1974] (recalled). */
const BISQUARE = 4.685;
/** Median absolute deviation to sigma under Gaussian error. */
const MAD_TO_SIGMA = 1.4826;
const ROUNDS = 4;

/** Work space of `robustLine`; one a caller, so that no fit allocates. */
export interface LineFit {
  /** Height at t = 0 and slope of the line. */
  a: number;
  b: number;
  /** Robust spread of the samples about it. */
  spread: number;
  readonly residual: Float64Array;
  readonly sorted: Float64Array;
}

export const lineFit = (capacity: number): LineFit => ({
  a: Number.NaN,
  b: Number.NaN,
  spread: Number.NaN,
  residual: new Float64Array(capacity),
  sorted: new Float64Array(capacity),
});

/**
 * A line z = a + b·t through n samples by iteratively reweighted least squares with Tukey's bisquare, so that a stone or a
 * bush does not tilt it. `weight` may be null for equal weights. Writes into `fit`; NaN where fewer than 3 samples are left.
 */
export function robustLine(
  t: Float64Array,
  z: Float64Array,
  weight: Float64Array | null,
  n: number,
  fit: LineFit,
): void {
  const { residual, sorted } = fit;
  let spread = Number.POSITIVE_INFINITY;
  fit.a = Number.NaN;
  fit.b = Number.NaN;
  for (let round = 0; round < ROUNDS; round++) {
    let sw = 0;
    let st = 0;
    let sz = 0;
    let stt = 0;
    let stz = 0;
    let used = 0;
    for (let k = 0; k < n; k++) {
      let w = weight ? weight[k]! : 1;
      if (round > 0) {
        const u = residual[k]! / (BISQUARE * spread);
        w *= u > -1 && u < 1 ? (1 - u * u) ** 2 : 0;
      }
      if (!(w > 0)) continue;
      used++;
      sw += w;
      st += w * t[k]!;
      sz += w * z[k]!;
      stt += w * t[k]! * t[k]!;
      stz += w * t[k]! * z[k]!;
    }
    const det = sw * stt - st * st;
    if (used < 3 || !(det > 0)) return;
    fit.b = (sw * stz - st * sz) / det;
    fit.a = (sz - fit.b * st) / sw;
    for (let k = 0; k < n; k++) {
      residual[k] = z[k]! - fit.a - fit.b * t[k]!;
      sorted[k] = Math.abs(residual[k]!);
    }
    fit.spread = MAD_TO_SIGMA * medianInPlace(sorted, n);
    spread = Math.max(LEAST_SPREAD_M, fit.spread);
  }
}

/** Median of the first n values, which are left sorted. Insertion sort: n is a dozen. */
export function medianInPlace(values: Float64Array, n: number): number {
  for (let i = 1; i < n; i++) {
    const v = values[i]!;
    let j = i - 1;
    while (j >= 0 && values[j]! > v) {
      values[j + 1] = values[j]!;
      j--;
    }
    values[j + 1] = v;
  }
  if (n === 0) return Number.NaN;
  return n & 1 ? values[n >> 1]! : (values[(n >> 1) - 1]! + values[n >> 1]!) / 2;
}
