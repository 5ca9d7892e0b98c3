import type { DescentLine } from '../../../src/descent/index.ts';
import { type Ground, sampleLine, sampleLineCubic } from '../../../src/terrain/index.ts';

/** The noise-free ground read along one line. */
export interface TruthAlong {
  readonly governingDeg: number;
  readonly dropM: number;
  /** A fall of 1.5 m and more within 2 m beyond what the slopes beside it fall. */
  readonly hasStep: boolean;
}

const STEP_M = 0.25;
const WINDOW_M = 5;

/** Steepest least-squares 5 m window, drop and walls of the noise-free ground along a descent; null where it has no data. */
export function truthAlong(truth: Ground, { start, direction, lengthM }: DescentLine): TruthAlong | null {
  const count = Math.floor(lengthM / STEP_M) + 1;
  const z = new Float64Array(count);
  sampleLineCubic(truth, start.x, start.y, direction.x * STEP_M, direction.y * STEP_M, count, z);
  const end = new Float64Array(1);
  sampleLine(truth, start.x + direction.x * lengthM, start.y + direction.y * lengthM, 0, 0, 1, end);
  if (!z.every(Number.isFinite) || count < 9) return null;
  const window = Math.min(count, WINDOW_M / STEP_M + 1);
  let steepest = Number.NEGATIVE_INFINITY;
  for (let k = 0; k + window <= count; k += 2) steepest = Math.max(steepest, fittedFall(z, k, window));
  return {
    governingDeg: (Math.atan(steepest) * 180) / Math.PI,
    dropM: z[0] - (Number.isFinite(end[0]) ? end[0] : z[count - 1]),
    hasStep: findStep(z),
  };
}

function fittedFall(z: Float64Array, from: number, count: number): number {
  const middle = (count - 1) / 2;
  let up = 0;
  let down = 0;
  for (let k = 0; k < count; k++) {
    up += (k - middle) * z[from + k];
    down += (k - middle) ** 2;
  }
  return -up / down / STEP_M;
}

function findStep(z: Float64Array): boolean {
  const run = 2 / STEP_M;
  const side = 5 / STEP_M;
  for (let k = 4; k + run + 4 < z.length; k++) {
    const above = fittedFall(z, Math.max(0, k - side), Math.min(side, k) + 1);
    const below = fittedFall(z, k + run, Math.min(side, z.length - 1 - k - run) + 1);
    if (z[k] - z[k + run] - 2 * Math.max(above, below, 0) >= 1.5) return true;
  }
  return false;
}
