import { type Footprint, forward } from './footprint.ts';

/** A box in plan: middle, unit vector along it, half length and half width, metres. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly ux: number;
  readonly uy: number;
  readonly halfLengthM: number;
  readonly halfWidthM: number;
}

/** The box of a footprint. */
export function boxOf({ x, y, headingDeg, lengthM, widthM }: Footprint): Box {
  const [ux, uy] = forward(headingDeg);
  return { x, y, ux, uy, halfLengthM: lengthM / 2, halfWidthM: widthM / 2 };
}

/**
 * True where the segment from a to b enters the box grown by `growM` on every side (square corners, so that what it lets
 * through is nowhere nearer than `growM`). Liang and Barsky's clipping in the frame of the box.
 */
export function segmentHitsBox(box: Box, growM: number, ax: number, ay: number, bx: number, by: number): boolean {
  const { x, y, ux, uy } = box;
  const au = (ax - x) * ux + (ay - y) * uy;
  const av = (ax - x) * uy - (ay - y) * ux;
  const du = (bx - ax) * ux + (by - ay) * uy;
  const dv = (bx - ax) * uy - (by - ay) * ux;
  const hu = box.halfLengthM + growM;
  const hv = box.halfWidthM + growM;
  if (hu <= 0 || hv <= 0) return false;
  let from = 0;
  let to = 1;
  if (Math.abs(du) < 1e-12) {
    if (Math.abs(au) >= hu) return false;
  } else {
    const s = (-hu - au) / du;
    const t = (hu - au) / du;
    from = Math.max(from, Math.min(s, t));
    to = Math.min(to, Math.max(s, t));
  }
  if (Math.abs(dv) < 1e-12) {
    if (Math.abs(av) >= hv) return false;
  } else {
    const s = (-hv - av) / dv;
    const t = (hv - av) / dv;
    from = Math.max(from, Math.min(s, t));
    to = Math.min(to, Math.max(s, t));
  }
  return from < to;
}

/** True where a path of x, y pairs, or one point, enters the grown box. Most of a long path is sieved by its extents alone. The path does not change. */
export function pathHitsBox(xy: Float64Array, box: Box, growM: number): boolean {
  const halfLengthM = box.halfLengthM + growM;
  const halfWidthM = box.halfWidthM + growM;
  const [ux, uy] = [Math.abs(box.ux), Math.abs(box.uy)];
  const reachX = ux * halfLengthM + uy * halfWidthM + SIEVE_SLACK_M;
  const reachY = uy * halfLengthM + ux * halfWidthM + SIEVE_SLACK_M;
  const [west, east] = [box.x - reachX, box.x + reachX];
  const [south, north] = [box.y - reachY, box.y + reachY];
  const known = extentsOf(xy);
  const last = Math.max(1, xy.length - 2);
  for (let first = 0, e = 0; first < last && first + 1 < xy.length; first += BLOCK, e += 4) {
    if (known[e] > east || known[e + 1] > north || known[e + 2] < west || known[e + 3] < south) continue;
    for (let k = first; k < last && k < first + BLOCK; k += 2) {
      const next = k + 3 < xy.length ? k + 2 : k;
      const [ax, ay, bx, by] = [xy[k], xy[k + 1], xy[next], xy[next + 1]];
      if ((ax < west && bx < west) || (ax > east && bx > east)) continue;
      if ((ay < south && by < south) || (ay > north && by > north)) continue;
      if (segmentHitsBox(box, growM, ax, ay, bx, by)) return true;
    }
  }
  return false;
}

/** Numbers of a path that share an extent. */
const BLOCK = 16;

const extents = new WeakMap<Float64Array, Float64Array>();

/** West, south, east, north of a path, for each block of its segments; worked out once a path. */
function extentsOf(xy: Float64Array): Float64Array {
  const known = extents.get(xy);
  if (known !== undefined) return known;
  const found = new Float64Array(4 * Math.ceil(xy.length / BLOCK));
  for (let first = 0, e = 0; first < xy.length; first += BLOCK, e += 4) {
    const box = [Infinity, Infinity, -Infinity, -Infinity];
    for (let k = first; k + 1 < xy.length && k < first + BLOCK + 2; k += 2) {
      box[0] = Math.min(box[0], xy[k]);
      box[1] = Math.min(box[1], xy[k + 1]);
      box[2] = Math.max(box[2], xy[k]);
      box[3] = Math.max(box[3], xy[k + 1]);
    }
    found.set(box, e);
  }
  extents.set(xy, found);
  return found;
}

/** Rounding alone sieves nothing, metres. */
const SIEVE_SLACK_M = 1e-6;

/** Distance from a segment to the box, metres, 0 where they touch: it lies at a corner of the box or an end of the segment. */
export function segmentToBoxM(box: Box, ax: number, ay: number, bx: number, by: number): number {
  if (segmentHitsBox(box, 0, ax, ay, bx, by)) return 0;
  const { x, y, ux, uy, halfLengthM, halfWidthM } = box;
  let least = Math.min(pointToBoxM(box, ax, ay), pointToBoxM(box, bx, by)) ** 2;
  const dx = bx - ax;
  const dy = by - ay;
  const square = dx * dx + dy * dy;
  for (let k = 0; k < 4; k++) {
    const u = k < 2 ? halfLengthM : -halfLengthM;
    const v = k % 2 === 0 ? halfWidthM : -halfWidthM;
    const cx = x + u * ux + v * uy - ax;
    const cy = y + u * uy - v * ux - ay;
    const t = square > 0 ? Math.min(1, Math.max(0, (cx * dx + cy * dy) / square)) : 0;
    least = Math.min(least, (cx - t * dx) ** 2 + (cy - t * dy) ** 2);
  }
  return Math.sqrt(least);
}

/** Distance from a point to the box, metres, 0 inside. */
export function pointToBoxM({ x, y, ux, uy, halfLengthM, halfWidthM }: Box, px: number, py: number): number {
  const u = Math.abs((px - x) * ux + (py - y) * uy) - halfLengthM;
  const v = Math.abs((px - x) * uy - (py - y) * ux) - halfWidthM;
  return Math.sqrt(Math.max(0, u) ** 2 + Math.max(0, v) ** 2);
}

/** True where two boxes overlap: a long or short side of one enters the other. Boxes farther apart than both reach do not. */
export function boxesMeet(a: Box, b: Box): boolean {
  const reachM = a.halfLengthM + a.halfWidthM + b.halfLengthM + b.halfWidthM;
  if (Math.abs(a.x - b.x) > reachM || Math.abs(a.y - b.y) > reachM) return false;
  return sideEnters(a, b) || sideEnters(b, a);
}

function sideEnters({ x, y, ux, uy, halfLengthM: l, halfWidthM: w }: Box, into: Box): boolean {
  const at = (u: number, v: number): readonly [number, number] => [x + u * ux + v * uy, y + u * uy - v * ux];
  const corners = [at(l, w), at(l, -w), at(-l, -w), at(-l, w)];
  return corners.some((from, k) => segmentHitsBox(into, 0, ...from, ...corners[(k + 1) % 4]));
}
