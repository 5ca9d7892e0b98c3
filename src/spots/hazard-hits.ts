import { type Box, pathHitsBox } from './box-hit.ts';
import { type Hazard, KEEP_OFF_M, SOFT_POINT_M } from './hazards.ts';

/** True where a box comes nearer to a hazard than that kind allows, or stands in it. */
export function hazardHits({ kind, shape, xy }: Hazard, box: Box): boolean {
  const off = KEEP_OFF_M[kind];
  if (off === undefined) return false;
  const grow = kind === 'soft ground' && shape === 'point' ? Math.max(off, SOFT_POINT_M) : off;
  if (pathHitsBox(xy, box, grow)) return true;
  return shape === 'area' && insideRing(xy, box.x, box.y);
}

/** True where a point lies inside a ring of x, y pairs, closed or not; even-odd rule. */
export function insideRing(ring: Float64Array, x: number, y: number): boolean {
  let inside = false;
  for (let k = 0, before = ring.length - 2; k < ring.length; before = k, k += 2) {
    const yk = ring[k + 1];
    const yb = ring[before + 1];
    if (yk > y !== yb > y && x < ring[k] + ((y - yk) / (yb - yk)) * (ring[before] - ring[k])) inside = !inside;
  }
  return inside;
}

/** The hazards that can matter within a radius of a point, metres: a sieve before the exact test. */
export function hazardsNear(hazards: readonly Hazard[], x: number, y: number, radiusM: number): Hazard[] {
  const side = { x, y, ux: 0, uy: 1, halfLengthM: radiusM, halfWidthM: radiusM };
  return hazards.filter(({ kind, shape, xy }) => {
    const grow = Math.max(KEEP_OFF_M[kind] ?? 0, SOFT_POINT_M);
    if (pathHitsBox(xy, side, grow)) return true;
    return shape === 'area' && insideRing(xy, x, y);
  });
}
