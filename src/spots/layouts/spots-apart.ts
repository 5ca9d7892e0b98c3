import type { PointM } from '../../geo/index.ts';
import { boxOf, segmentHitsBox } from '../box-hit.ts';
import { corners } from '../footprint.ts';
import type { Spot } from '../spot-types.ts';

/** Kept between two parked apparatus, and between a rope under tension and a body that it does not pull at, metres. */
const APART_M = 0.5;
const ROPE_OFF_M = 0.3;

/** True where two parked apparatus do not touch. */
export function spotsApart(a: Spot, b: Spot): boolean {
  const { footprint: one } = a;
  const { footprint: other } = b;
  const farM = APART_M + (one.lengthM + one.widthM + other.lengthM + other.widthM) / 2;
  if (Math.abs(one.x - other.x) > farM || Math.abs(one.y - other.y) > farM) return true;
  const box = boxOf(a.footprint);
  const c = corners(b.footprint);
  for (let k = 0; k < 8; k += 2) {
    if (segmentHitsBox(box, APART_M, c[k], c[k + 1], c[(k + 2) % 8], c[(k + 3) % 8])) return false;
  }
  return true;
}

/** True where a rope from a to b keeps off a parked apparatus; it may be tied to its outline at b. */
export function ropeClear(spot: Spot, a: PointM, b: PointM, tiedAtB: boolean): boolean {
  const box = boxOf(spot.footprint);
  if (!tiedAtB) return !segmentHitsBox(box, ROPE_OFF_M, a.x, a.y, b.x, b.y);
  return !segmentHitsBox(box, -0.05, a.x, a.y, b.x, b.y);
}

/** True where no corner of a parked apparatus stands inside a triangle. */
export function outsideTriangle(spot: Spot, a: PointM, b: PointM, c: PointM): boolean {
  const points = corners(spot.footprint);
  for (let k = 0; k < 8; k += 2) if (inTriangle(points[k], points[k + 1], a, b, c)) return false;
  return true;
}

function inTriangle(x: number, y: number, a: PointM, b: PointM, c: PointM): boolean {
  const side = (p: PointM, q: PointM): number => (q.x - p.x) * (y - p.y) - (q.y - p.y) * (x - p.x);
  const [s, t, u] = [side(a, b), side(b, c), side(c, a)];
  return (s > 0 && t > 0 && u > 0) || (s < 0 && t < 0 && u < 0);
}
