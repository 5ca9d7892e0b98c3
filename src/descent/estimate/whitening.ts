/**
 * Turns correlated samples into independent ones: Σ_j row(k)[j] · z[k−j] has variance 1 and is independent of the rows
 * before it. Rows settle after a few samples, so `rows` holds the first `settled` ones (stride `settled`, entry j for sample
 * k−j); every later row equals the last of them.
 */
export interface Whitening {
  readonly n: number;
  readonly settled: number;
  readonly rows: Float64Array;
  /** Natural logarithm of the determinant of the covariance. */
  readonly logDet: number;
}

/** Partial correlations under this count as none; three in a row end the recursion. */
const NEGLIGIBLE = 1e-5;
const NEGLIGIBLE_RUN = 3;
/** A wandering slope has forgotten its start after this many samples. */
const WANDER_SETTLED = 80;

/**
 * Whitening of a stationary process by the Levinson–Durbin recursion [source: levinson1947]. `covariance[lag]` in m², at
 * least `n` entries. Cut off once the partial correlations are negligible, the process is the autoregression of that order.
 */
export function whitenStationary(covariance: Float64Array, n: number): Whitening {
  let a = Float64Array.of(1);
  let variance = covariance[0];
  let logDet = Math.log(variance);
  const found = [Float64Array.of(1 / Math.sqrt(variance))];
  let small = 0;
  for (let k = 1; k < n && small < NEGLIGIBLE_RUN; k++) {
    let reflected = covariance[k];
    for (let j = 1; j < k; j++) reflected += a[j] * covariance[k - j];
    reflected = -reflected / variance;
    small = Math.abs(reflected) < NEGLIGIBLE ? small + 1 : 0;
    const next = new Float64Array(k + 1);
    next[0] = 1;
    for (let j = 1; j < k; j++) next[j] = a[j] + reflected * a[k - j];
    next[k] = reflected;
    a = next;
    variance *= 1 - reflected * reflected;
    logDet += Math.log(variance);
    const scale = 1 / Math.sqrt(variance);
    found.push(a.map((weight) => weight * scale));
  }
  return settle(found, n, logDet + (n - found.length) * Math.log(variance));
}

/**
 * Whitening of any process by the Cholesky factor of its covariance: `covariance(i, j)` in m², of which the first 80
 * samples are used; later rows equal the last.
 */
export function whitenSettling(covariance: (i: number, j: number) => number, n: number): Whitening {
  const size = Math.min(n, WANDER_SETTLED);
  const c = new Float64Array(size * size);
  const found: Float64Array[] = [];
  let logDet = 0;
  let last = 0;
  for (let i = 0; i < size; i++) {
    const at = i * size;
    let pivot = covariance(i, i);
    for (let j = 0; j < i; j++) {
      let sum = covariance(i, j);
      for (let m = 0; m < j; m++) sum -= c[at + m] * c[j * size + m];
      c[at + j] = sum / c[j * size + j];
      pivot -= c[at + j] * c[at + j];
    }
    last = Math.log(pivot);
    logDet += last;
    const root = Math.sqrt(pivot);
    c[at + i] = root;
    // row of the inverse: (unit − Σ c·earlier rows) / root
    const row = new Float64Array(i + 1);
    row[0] = 1 / root;
    for (let m = 0; m < i; m++) {
      const share = c[at + m] / root;
      const earlier = found[m];
      for (let j = 0; j <= m; j++) row[i - m + j] -= share * earlier[j];
    }
    found.push(row);
  }
  return settle(found, n, logDet + (n - size) * last);
}

/** Applies the rows to z. */
export function whiten(w: Whitening, z: Float64Array, out: Float64Array): void {
  const { n, settled, rows } = w;
  const last = (settled - 1) * settled;
  let k = 0;
  for (; k < settled; k++) out[k] = rowTimes(rows, k * settled, k, z, k);
  // Once settled the same row serves four samples at a time: their sums do not wait for each other.
  for (; k + 3 < n; k += 4) {
    let s0 = 0;
    let s1 = 0;
    let s2 = 0;
    let s3 = 0;
    for (let j = 0, at = k; j < settled; j++, at--) {
      const weight = rows[last + j];
      s0 += weight * z[at];
      s1 += weight * z[at + 1];
      s2 += weight * z[at + 2];
      s3 += weight * z[at + 3];
    }
    out[k] = s0;
    out[k + 1] = s1;
    out[k + 2] = s2;
    out[k + 3] = s3;
  }
  for (; k < n; k++) out[k] = rowTimes(rows, last, settled - 1, z, k);
}

/** Sum of the entries 0 to `row` at `at` with the samples from k back. */
function rowTimes(rows: Float64Array, at: number, row: number, z: Float64Array, k: number): number {
  let sum = 0;
  for (let j = 0; j <= row; j++) sum += rows[at + j] * z[k - j];
  return sum;
}

/** Applies the transposed rows to v; after `whiten` this makes the inverse covariance times z. */
export function whitenTransposed(w: Whitening, v: Float64Array, out: Float64Array): void {
  const { n, settled, rows } = w;
  const last = (settled - 1) * settled;
  let m = 0;
  for (; m < settled && m < n; m++) out[m] = columnTimes(w, v, m);
  for (; m + settled + 2 < n; m += 4) {
    let s0 = 0;
    let s1 = 0;
    let s2 = 0;
    let s3 = 0;
    for (let j = 0, at = m; j < settled; j++, at++) {
      const weight = rows[last + j];
      s0 += weight * v[at];
      s1 += weight * v[at + 1];
      s2 += weight * v[at + 2];
      s3 += weight * v[at + 3];
    }
    out[m] = s0;
    out[m + 1] = s1;
    out[m + 2] = s2;
    out[m + 3] = s3;
  }
  for (; m < n; m++) out[m] = columnTimes(w, v, m);
}

/** Sum of the entries of all rows that meet sample m. */
function columnTimes({ n, settled, rows }: Whitening, v: Float64Array, m: number): number {
  const end = Math.min(n, m + settled);
  let sum = 0;
  for (let k = m; k < end; k++) sum += rows[Math.min(k, settled - 1) * settled + k - m] * v[k];
  return sum;
}

function settle(found: readonly Float64Array[], n: number, logDet: number): Whitening {
  const settled = found.length;
  const rows = new Float64Array(settled * settled);
  for (let k = 0; k < settled; k++) rows.set(found[k], k * settled);
  return { n, settled, rows, logDet };
}
