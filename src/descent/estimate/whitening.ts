/**
 * Turns correlated samples into independent ones: row k holds the weights of samples k, k−1 … k−band, so that
 * Σ_j rows[k·(band+1)+j] · z[k−j] has variance 1 and is independent of the rows before it.
 */
export interface Whitening {
  readonly n: number;
  readonly band: number;
  readonly rows: Float64Array;
  /** Natural logarithm of the determinant of the covariance. */
  readonly logDet: number;
}

/** Weights under this share of a row's first are dropped: far below what a single-precision height can show. */
const NEGLIGIBLE = 1e-9;

/**
 * Whitening of a stationary process by the Levinson–Durbin recursion (Levinson 1947; recalled).
 * `covariance[lag]` in m², at least `n` entries.
 */
export function whitenStationary(covariance: Float64Array, n: number): Whitening {
  const full = new Float64Array(n * n);
  let a = new Float64Array(n);
  let next = new Float64Array(n);
  let variance = covariance[0];
  let logDet = Math.log(variance);
  full[0] = 1 / Math.sqrt(variance);
  a[0] = 1;
  for (let k = 1; k < n; k++) {
    let reflected = covariance[k];
    for (let j = 1; j < k; j++) reflected += a[j] * covariance[k - j];
    reflected = -reflected / variance;
    next[0] = 1;
    for (let j = 1; j < k; j++) next[j] = a[j] + reflected * a[k - j];
    next[k] = reflected;
    variance *= 1 - reflected * reflected;
    logDet += Math.log(variance);
    const scale = 1 / Math.sqrt(variance);
    for (let j = 0; j <= k; j++) full[k * n + j] = next[j] * scale;
    [a, next] = [next, a];
  }
  return banded(full, n, logDet);
}

/** Whitening of any covariance (n × n, row-major, symmetric, m²) by its Cholesky factor, which is overwritten. */
export function whitenDense(covariance: Float64Array, n: number): Whitening {
  const c = covariance;
  let logDet = 0;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = c[i * n + j];
      for (let m = 0; m < j; m++) sum -= c[i * n + m] * c[j * n + m];
      if (i === j) {
        c[i * n + i] = Math.sqrt(sum);
        logDet += Math.log(sum);
      } else c[i * n + j] = sum / c[j * n + j];
    }
  }
  const full = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    const scale = 1 / c[i * n + i];
    full[i * n] = scale;
    for (let j = i - 1; j >= 0; j--) {
      let sum = 0;
      for (let m = j; m < i; m++) sum -= c[i * n + m] * full[m * n + (m - j)];
      full[i * n + (i - j)] = sum * scale;
    }
  }
  return banded(full, n, logDet);
}

/** Applies the rows to z. */
export function whiten(w: Whitening, z: Float64Array, out: Float64Array): void {
  const { n, band, rows } = w;
  const stride = band + 1;
  for (let k = 0; k < n; k++) {
    const last = k < band ? k : band;
    let sum = 0;
    for (let j = 0, at = k * stride; j <= last; j++) sum += rows[at + j] * z[k - j];
    out[k] = sum;
  }
}

/** Applies the transposed rows to v; after `whiten` this makes the inverse covariance times z. */
export function whitenTransposed(w: Whitening, v: Float64Array, out: Float64Array): void {
  const { n, band, rows } = w;
  const stride = band + 1;
  out.fill(0, 0, n);
  for (let k = 0; k < n; k++) {
    const last = k < band ? k : band;
    const value = v[k];
    for (let j = 0, at = k * stride; j <= last; j++) out[k - j] += rows[at + j] * value;
  }
}

function banded(full: Float64Array, n: number, logDet: number): Whitening {
  let band = 0;
  for (let k = 0; k < n; k++) {
    const limit = NEGLIGIBLE * full[k * n];
    for (let j = k; j > band; j--) {
      if (Math.abs(full[k * n + j]) > limit) {
        band = j;
        break;
      }
    }
  }
  const stride = band + 1;
  const rows = new Float64Array(n * stride);
  for (let k = 0; k < n; k++) {
    const last = Math.min(k, band);
    for (let j = 0; j <= last; j++) rows[k * stride + j] = full[k * n + j];
  }
  return { n, band, rows, logDet };
}
