import { normalTable } from './normal-table.ts';

/**
 * What the cells cannot show of a window: between its knots the true ground goes its own way. One sigma of the angle in
 * degrees, for windows of five knots, as simulated hillsides with waves of 3 to 10 m gave it (common practice, no source).
 */
const UNSEEN_DEG = 0.3;

/** The unseen part of draw `index`, degrees: normal, the same for the same index, and in pairs that cancel. */
export function unseenDeg(index: number): number {
  const value = UNSEEN_DEG * normalTable()[index >> 1];
  return index % 2 === 0 ? value : -value;
}

/**
 * A cell that holds the mean of its ground flattens it by 1/24 of the second difference; one that holds the height at its
 * centre does not, and no file says which: half of it is undone, in place on a copy. Heights at knots, metres.
 */
export function sharpened(heightM: Float64Array): Float64Array {
  const out = heightM.slice();
  for (let k = 1; k + 1 < out.length; k++) {
    out[k] -= (heightM[k - 1] - 2 * heightM[k] + heightM[k + 1]) / 48;
  }
  return out;
}
