import type { AngleKnots } from './angle-knots.ts';

export interface Steepest {
  /** Slope of the steepest window, tan, positive downward. */
  slope: number;
  /** Its start in half knots from the first knot. */
  halfKnot: number;
}

/**
 * Finds the steepest least-squares window of a ground given at knots, a start every half knot, up to the last half knot.
 * Half-way between knots the ground follows cubic convolution [source: keys1981] with a = −1/2, since a straight line
 * there flattens waves of a few metres; the first and the last half lie on the line. Ties go to the first window.
 */
export function windowFinder({
  count,
  knotM,
  windowM,
  lastHalfKnot,
}: AngleKnots): (fallM: Float64Array, out: Steepest) => void {
  const half = Math.round(windowM / knotM);
  const fine = new Float64Array(2 * count - 1);
  let square = 0;
  for (let j = 1; j <= half; j++) square += 2 * j * j;
  const scale = 2 / (square * knotM);
  return (fallM, out) => {
    for (let k = 0; k < count; k++) fine[2 * k] = fallM[k];
    for (let k = 0; k + 1 < count; k++) {
      const line = fallM[k] + fallM[k + 1];
      const isInner = k > 0 && k + 2 < count;
      fine[2 * k + 1] = isInner ? (9 * line - fallM[k - 1] - fallM[k + 2]) / 16 : line / 2;
    }
    let best = -Infinity;
    let where = 0;
    for (let middle = half; middle + half <= lastHalfKnot; middle++) {
      let sum = 0;
      for (let j = 1; j <= half; j++) sum += j * (fine[middle + j] - fine[middle - j]);
      if (sum > best) {
        best = sum;
        where = middle - half;
      }
    }
    out.slope = best * scale;
    out.halfKnot = where;
  };
}
