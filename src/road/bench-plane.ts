import type { SideSign } from './edge-evidence.ts';

/** The plane of the bench is taken over this many samples either side of its middle. */
export const PLANE_HALF = 4;

/** The line of least squares across the bench: height at its middle, metres, and rise per sample outward on one side. */
export interface BenchPlane {
  readonly level: number;
  readonly slope: number;
}

/** Fits the plane of the bench about sample `middle` of the heights `z`. */
export function benchPlane(z: Float64Array, middle: number, side: SideSign): BenchPlane {
  let sum = 0;
  let tilt = 0;
  let square = 0;
  for (let j = -PLANE_HALF; j <= PLANE_HALF; j++) {
    sum += z[middle + side * j];
    tilt += j * z[middle + side * j];
    square += j * j;
  }
  return { level: sum / (2 * PLANE_HALF + 1), slope: tilt / square };
}
