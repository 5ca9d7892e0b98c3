import type { Knots } from './roughness-levels.ts';

/**
 * The knots on which the angle of a descent is estimated: a whole number in each window, about a metre or a cell apart,
 * from the edge on; null where the descent is too short for more than one window.
 */
export function angleKnots(lengthM: number, cellM: number, windowM: number): Knots | null {
  const knotM = windowM / Math.max(3, Math.round(windowM / Math.max(1, cellM)));
  const count = Math.floor(lengthM / knotM + 1e-9) + 1;
  return count * knotM >= windowM + 2 * knotM - 1e-9 ? { count, knotM, windowM } : null;
}
