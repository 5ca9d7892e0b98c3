import { describe, expect, it } from 'vitest';
import { columnProducts } from '../../src/descent/estimate/column-products.ts';
import {
  type Whitening,
  whiten,
  whitenSettling,
  whitenStationary,
  whitenTransposed,
} from '../../src/descent/estimate/whitening.ts';

type Covariance = (i: number, j: number) => number;

const waves: Covariance = (i, j) => {
  const d = Math.abs(i - j);
  return 0.0115 * 0.7 ** d + 0.01 * Math.exp(-d / 15) * Math.cos((2 * Math.PI * d) / 8);
};
const chain: Covariance = (i, j) => 0.0115 * 0.7 ** Math.abs(i - j);
const wander: Covariance = (i, j) => {
  let shared = 0;
  for (let m = 1; m < Math.min(i, j); m++) shared += (i - m) * (j - m);
  return chain(i, j) + 0.04 ** 2 * shared;
};
const byLag = (c: Covariance, n: number) => Float64Array.from({ length: n }, (_, d) => c(0, d));

/** Solves by Gauss without pivoting (positive definite), and the log determinant. */
function solve(c: Covariance, right: Float64Array): { x: Float64Array; logDet: number } {
  const n = right.length;
  const a = Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_, j) => c(i, j)));
  const x = right.slice();
  let logDet = 0;
  for (let i = 0; i < n; i++) {
    logDet += Math.log(a[i][i]);
    for (let r = i + 1; r < n; r++) {
      const f = a[r][i] / a[i][i];
      for (let k = i; k < n; k++) a[r][k] -= f * a[i][k];
      x[r] -= f * x[i];
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i] -= a[i][k] * x[k];
    x[i] /= a[i][i];
  }
  return { x, logDet };
}

const n = 60;
const made: [string, Covariance, Whitening, number][] = [
  ['a chain', chain, whitenStationary(byLag(chain, n), n), 1e-6],
  ['waves', waves, whitenStationary(byLag(waves, n), n), 1e-3],
  ['a wandering slope', wander, whitenSettling(wander, n), 1e-6],
];

describe.each(made)('whitening of %s', (_name, covariance, w, tolerance) => {
  it('makes the inverse covariance', () => {
    const z = Float64Array.from({ length: n }, (_, i) => Math.sin(i * i));
    const white = new Float64Array(n);
    const weighted = new Float64Array(n);
    whiten(w, z, white);
    whitenTransposed(w, white, weighted);
    const { x, logDet } = solve(covariance, z);
    const size = Math.max(...x.map(Math.abs));
    for (let i = 0; i < n; i++) expect(Math.abs(weighted[i] - x[i])).toBeLessThan(tolerance * size);
    expect(Math.abs(w.logDet - logDet)).toBeLessThan(n * tolerance);
  });

  it('gives the inner products of height, slope and ramps', () => {
    const knotM = 1.25;
    const columns = Array.from({ length: n }, (_, c) =>
      Float64Array.from({ length: n }, (_, k) => (c === 0 ? 1 : Math.max(0, k - (c - 1)) * knotM)),
    );
    const white = columns.map((column) => {
      const out = new Float64Array(n);
      whiten(w, column, out);
      return out;
    });
    const products = columnProducts(w, knotM);
    for (let a = 0; a < n; a++) {
      for (let b = 0; b < n; b++) {
        const direct = white[a].reduce((sum, v, k) => sum + v * white[b][k], 0);
        expect(Math.abs(products[a * n + b] - direct)).toBeLessThan(1e-9 * Math.max(1, products[n + 1]));
      }
    }
  });
});
