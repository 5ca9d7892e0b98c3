import type { DescentLine } from '../../../src/descent/index.ts';
import { type Ground, sampleLine, sampleLineCubic } from '../../../src/terrain/index.ts';

/** The noise-free ground read along one line. */
export interface TruthAlong {
  readonly governingDeg: number;
  readonly dropM: number;
  /** A fall of 1.5 m and more within 2 m beyond what the slopes beside it fall, by the written rule. */
  readonly hasStep: boolean;
}

const STEP_M = 0.25;
const WINDOW_M = 5;
/** Two cells, and the ground beside them. */
const RUN_M = 2;
const BESIDE_M = 5;
const LEAST_STEP_M = 1.5;

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
  const around = new Float64Array(count + 2 * (BESIDE_M / STEP_M));
  const back = { x: start.x - direction.x * BESIDE_M, y: start.y - direction.y * BESIDE_M };
  sampleLineCubic(truth, back.x, back.y, direction.x * STEP_M, direction.y * STEP_M, around.length, around);
  return {
    governingDeg: (Math.atan(steepest) * 180) / Math.PI,
    dropM: z[0] - (Number.isFinite(end[0]) ? end[0] : z[count - 1]),
    hasStep: findStep(around, lengthM),
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

/**
 * The written rule on noise-free ground: a run of 2 m on the descent falls 1.5 m or more beyond what the steeper of the 5 m
 * above it, bench included, and of the 5 m below it would. `z` begins 5 m behind the edge and goes on past the end.
 */
function findStep(z: Float64Array, lengthM: number): boolean {
  const run = RUN_M / STEP_M;
  const side = BESIDE_M / STEP_M;
  const last = side + Math.floor((lengthM - RUN_M) / STEP_M + 1e-9);
  for (let k = side; k <= last; k++) {
    const above = fittedFall(z, k - side, side + 1);
    const below = fittedFall(z, k + run, withData(z, k + run, side) + 1);
    if (z[k] - z[k + run] - RUN_M * Math.max(above, below, 0) >= LEAST_STEP_M) return true;
  }
  return false;
}

/** How many of the `most` samples after `from` have data. */
function withData(z: Float64Array, from: number, most: number): number {
  let count = 0;
  while (count < most && Number.isFinite(z[from + count + 1])) count++;
  return count;
}
