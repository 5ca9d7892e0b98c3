import { toRadians } from '../units/index.ts';

/** A rectangle on the ground: its middle on the local plane, true azimuth of its cab end, length and width; metres, degrees. */
export interface Footprint {
  readonly x: number;
  readonly y: number;
  readonly headingDeg: number;
  readonly lengthM: number;
  readonly widthM: number;
}

/**
 * Corners of a footprint as x, y pairs, metres: front left, front right, rear right, rear left, seen from the driver's seat.
 * The tyre lines are its long sides: elements 0, 1 to 6, 7 left and 2, 3 to 4, 5 right; bodywork beyond the tyres counts
 * as tyre.
 */
export function corners({ x, y, headingDeg, lengthM, widthM }: Footprint): Float64Array {
  const [ux, uy] = forward(headingDeg);
  const [lx, ly] = [(ux * lengthM) / 2, (uy * lengthM) / 2];
  const [wx, wy] = [(uy * widthM) / 2, (-ux * widthM) / 2];
  return Float64Array.of(
    x + lx - wx,
    y + ly - wy,
    x + lx + wx,
    y + ly + wy,
    x - lx + wx,
    y - ly + wy,
    x - lx - wx,
    y - ly - wy,
  );
}

/** The footprint of a straight strip from one point to another, such as a haul corridor; metres. */
export function strip(fromX: number, fromY: number, toX: number, toY: number, widthM: number): Footprint {
  return {
    x: (fromX + toX) / 2,
    y: (fromY + toY) / 2,
    headingDeg: (Math.atan2(toX - fromX, toY - fromY) * 180) / Math.PI,
    lengthM: Math.hypot(toX - fromX, toY - fromY),
    widthM,
  };
}

/** Points around a footprint, corners included and no farther apart than `stepM`, as x, y pairs, metres. */
export function outline(footprint: Footprint, stepM: number): Float64Array {
  const points = { xy: new Float64Array(0), length: 0 };
  outlineInto(points, footprint, stepM);
  return points.xy.slice(0, points.length);
}

/** A list of x, y pairs that is filled again and again: the first `length` numbers count. */
export interface Points {
  xy: Float64Array;
  length: number;
}

/** Fills a list with the points of `outline`, for a search that asks thousands of times. */
export function outlineInto(points: Points, footprint: Footprint, stepM: number): void {
  const c = corners(footprint);
  const along = Math.max(1, Math.ceil(footprint.lengthM / stepM));
  const across = Math.max(1, Math.ceil(footprint.widthM / stepM));
  points.length = 4 * (along + across);
  if (points.xy.length < points.length) points.xy = new Float64Array(points.length);
  const { xy } = points;
  let k = 0;
  for (let side = 0; side < 4; side++) {
    const a = 2 * side;
    const b = (a + 2) % 8;
    const n = side % 2 === 0 ? across : along;
    for (let j = 0; j < n; j++) {
      xy[k++] = c[a] + ((c[b] - c[a]) * j) / n;
      xy[k++] = c[a + 1] + ((c[b + 1] - c[a + 1]) * j) / n;
    }
  }
}

/** Unit vector of a true azimuth, x east and y north. */
export const forward = (azimuthDeg: number): readonly [number, number] => [
  Math.sin(toRadians(azimuthDeg)),
  Math.cos(toRadians(azimuthDeg)),
];
