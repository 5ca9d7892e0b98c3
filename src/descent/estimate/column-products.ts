import type { Whitening } from './whitening.ts';

/**
 * Inner products of the whitened columns: start height, first slope, then a ramp from each inner knot (column c is the ramp
 * from knot c − 1); n × n, row-major, symmetric. A whitened ramp is the second running sum of a whitening row, so an entry
 * costs one addition; and once the rows have settled a ramp depends on its distance alone, so that the products of all
 * ramps a given distance apart are running sums too.
 */
export function columnProducts(w: Whitening, knotM: number): Float64Array {
  const { n, settled } = w;
  const products = new Float64Array(n * n);
  const row = new Float64Array(n + 1);
  for (let k = 0; k < settled; k++) {
    const height = whitenedRamps(w, k, k, knotM, row);
    products[0] += height * height;
    for (let a = 1; a <= k; a++) {
      const value = row[k - a + 1];
      products[a] += height * value;
      for (let b = a; b <= k; b++) products[a * n + b] += value * row[k - b + 1];
    }
  }
  if (settled < n) addSettled(w, knotM, row, products);
  for (let a = 0; a < n; a++) for (let b = 0; b < a; b++) products[a * n + b] = products[b * n + a];
  return products;
}

/** Adds the products of the rows from `settled` on. */
function addSettled(w: Whitening, knotM: number, ramp: Float64Array, products: Float64Array): void {
  const { n, settled } = w;
  const height = whitenedRamps(w, settled - 1, n - 1, knotM, ramp);
  products[0] += (n - settled) * height * height;
  const sums = new Float64Array(n);
  for (let m = 1; m < n; m++) sums[m] = sums[m - 1] + ramp[m];
  for (let q = 0; q < n - 1; q++) products[q + 1] += height * (sums[n - 1 - q] - sums[Math.max(0, settled - 1 - q)]);
  for (let apart = 0; apart < n - 1; apart++) {
    for (let m = 1; m + apart < n; m++) sums[m] = sums[m - 1] + ramp[m + apart] * ramp[m];
    for (let q = apart; q < n - 1; q++) {
      products[(q - apart + 1) * n + q + 1] += sums[n - 1 - q] - sums[Math.max(0, settled - 1 - q)];
    }
  }
}

/** Row k of the whitening applied to a ramp that began m knots ago, into out[m], m to `last`; returns it for a constant. */
function whitenedRamps(w: Whitening, k: number, last: number, knotM: number, out: Float64Array): number {
  const { settled, rows } = w;
  let first = 0;
  let second = 0;
  out[0] = 0;
  for (let j = 0; j < last; j++) {
    if (j <= k) first += rows[k * settled + j];
    second += first * knotM;
    out[j + 1] = second;
  }
  if (last <= k) for (let j = last; j <= k; j++) first += rows[k * settled + j];
  return first;
}
