import { toDegrees } from '../units/index.ts';
import type { DescentLine } from './descent-line.ts';
import { fallSlope } from './estimate/index.ts';
import type { Hill } from './hill.ts';

/** Ground along a descent; distances in metres horizontal from the edge, ascending; falling angles positive. */
export interface Profile {
  readonly distanceM: Float64Array;
  /** Bilinear heights, never smoothed. */
  readonly elevationM: Float64Array;
  /** Least-squares angle of the window around each point, moved to lie wholly between edge and end. */
  readonly angleDeg: Float64Array;
  readonly windowM: number;
  /** Distance between points; the last one may be shorter. */
  readonly stepM: number;
}

/** Ground back from the edge across the bench: distances negative, nearest first, up to the first point without data. */
export interface Behind {
  readonly distanceM: Float64Array;
  readonly elevationM: Float64Array;
}

/** The space that a litter with its attendants takes along the slope, metres (practice). */
export const LITTER_WINDOW_M = 5;
const WINDOW_CELLS = 3;
const SHORTEST_STEP_M = 0.5;

/** Length over which an angle is taken: 5 m or three cells, whichever is longer, or all of a shorter descent; metres. */
export function windowFor(lengthM: number, cellM: number): number {
  return Math.min(lengthM, Math.max(LITTER_WINDOW_M, WINDOW_CELLS * cellM));
}

/** Distance between points of a profile: half a cell, but not under 0.5 m; metres. */
export const profileStep = (cellM: number): number => Math.max(SHORTEST_STEP_M, cellM / 2);

/** Heights and angles along a descent. */
export function profileAlong(hill: Hill, line: DescentLine): Profile {
  const stepM = profileStep(hill.cellM);
  const { start, end, direction, lengthM } = line;
  const whole = Math.floor(lengthM / stepM + 1e-9);
  const count = lengthM - whole * stepM > 1e-6 ? whole + 2 : whole + 1;
  const distanceM = Float64Array.from({ length: count }, (_, i) => Math.min(i * stepM, lengthM));
  const elevationM = new Float64Array(count);
  hill.heights(start.x, start.y, direction.x * stepM, direction.y * stepM, whole + 1, elevationM, 0);
  if (count > whole + 1) hill.heights(end.x, end.y, 0, 0, 1, elevationM, count - 1);
  return profileOf(distanceM, elevationM, stepM, windowFor(lengthM, hill.cellM));
}

/** The profile of heights that are already at hand. */
export function profileOf(distanceM: Float64Array, elevationM: Float64Array, stepM: number, windowM: number): Profile {
  const angleDeg = windowAngles(distanceM, elevationM, windowM);
  return { distanceM, elevationM, angleDeg, windowM, stepM };
}

/** Ground behind the edge, in the descent's line produced backwards, `reachM` metres. */
export function groundBehind(hill: Hill, line: DescentLine, reachM: number): Behind {
  const stepM = profileStep(hill.cellM);
  const count = Math.max(0, Math.floor(reachM / stepM + 1e-9));
  const heights = new Float64Array(count);
  const { start, direction } = line;
  const dx = -direction.x * stepM;
  const dy = -direction.y * stepM;
  hill.heights(start.x + dx, start.y + dy, dx, dy, count, heights, 0);
  const missing = heights.findIndex((z) => !Number.isFinite(z));
  const elevationM = missing < 0 ? heights : heights.slice(0, missing);
  return { distanceM: Float64Array.from(elevationM, (_, i) => -(i + 1) * stepM), elevationM };
}

function windowAngles(distanceM: Float64Array, elevationM: Float64Array, windowM: number): Float64Array {
  const last = distanceM.length - 1;
  const angles = new Float64Array(distanceM.length);
  let from = 0;
  let to = 0;
  for (let i = 0; i <= last; i++) {
    const start = Math.min(Math.max(0, distanceM[i] - windowM / 2), distanceM[last] - windowM);
    while (from < last && distanceM[from] < start - 1e-9) from++;
    while (to < last && distanceM[to + 1] <= distanceM[from] + windowM + 1e-9) to++;
    angles[i] = toDegrees(Math.atan(fallSlope(distanceM, elevationM, from, to)));
  }
  return angles;
}
