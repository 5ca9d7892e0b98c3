import type { FineGround } from '../ground/tiles.ts';
import { type Cut, heightOn } from './section.ts';

/** The true angles along a straight descent. */
export interface TrueAngle {
  /** Steepest least-squares 5 m window (the whole of a shorter descent), as a tangent on the map grid. */
  readonly governing: number;
  /** Where that window begins, metres from the edge. */
  readonly fromM: number;
  /** Fall from the edge to the end, metres. */
  readonly dropM: number;
  /** Walls on the way: distance and height, metres. */
  readonly steps: readonly { readonly distanceM: number; readonly heightM: number }[];
}

/** Heights are taken as far apart as a study takes them, so that both speak of the same windows, metres. */
const STEP_M = 0.5;
const WINDOW_M = 5;

/** Angles of the noise-free ground along a descent of `length` metres; null under 2 m. */
export function trueAngle(ground: FineGround, descent: Cut, length: number): TrueAngle | null {
  if (length < 2) return null;
  const count = Math.floor(length / STEP_M) + 1;
  const z = Float64Array.from({ length: count }, (_, k) => heightOn(ground, descent, k * STEP_M));
  const window = Math.min(count, WINDOW_M / STEP_M + 1);
  let governing = Number.NEGATIVE_INFINITY;
  let fromM = 0;
  for (let k = 0; k + window <= count; k++) {
    const fall = fittedFall(z, k, window);
    if (fall <= governing) continue;
    governing = fall;
    fromM = k * STEP_M;
  }
  return { governing, fromM, dropM: z[0] - z[count - 1], steps: steps(ground, descent, length) };
}

/** Fall per metre of the least-squares line through `count` heights from `from`. */
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
 * Runs of 2 m on the descent that fall 1.5 m more than the steeper of the 5 m above, bench included, and of the 5 m below
 * would: the largest of each.
 */
function steps(ground: FineGround, descent: Cut, length: number): { distanceM: number; heightM: number }[] {
  const run = 2 / STEP_M;
  const side = 5 / STEP_M;
  const last = side + Math.floor((length - 2) / STEP_M + 1e-9);
  const z = Float64Array.from({ length: last + run + side + 1 }, (_, k) =>
    heightOn(ground, descent, (k - side) * STEP_M),
  );
  const found: { distanceM: number; heightM: number }[] = [];
  for (let k = side; k <= last; k++) {
    const above = fittedFall(z, k - side, side + 1);
    const below = fittedFall(z, k + run, side + 1);
    const heightM = z[k] - z[k + run] - 2 * Math.max(above, below, 0);
    if (heightM < 1.5) continue;
    const distanceM = (k - side + run / 2) * STEP_M;
    const before = found.at(-1);
    if (!before || distanceM - before.distanceM > 4) found.push({ distanceM, heightM });
    else if (heightM > before.heightM) found[found.length - 1] = { distanceM, heightM };
  }
  return found;
}
