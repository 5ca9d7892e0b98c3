import type { PointM } from '../geo/index.ts';
import { type Hill, heightAtPoint } from './hill.ts';

/** Directions tried and how far out, metres; the fall that makes one worth taking, metres. */
const DIRECTIONS = 24;
const REACH_M = 6;
const LEAST_FALL_M = 0.3;

/** Unit vector in which a hollow with its lowest known point at (x, y) goes on down, or null where it is closed. */
export function valleyHeading(hill: Hill, x: number, y: number, heightM: number): PointM | null {
  let best = heightM - LEAST_FALL_M;
  let heading: PointM | null = null;
  const reach = Math.max(REACH_M, 2 * hill.cellM);
  for (let i = 0; i < DIRECTIONS; i++) {
    const angle = (2 * Math.PI * i) / DIRECTIONS;
    const ux = Math.cos(angle);
    const uy = Math.sin(angle);
    const height = heightAtPoint(hill, x + reach * ux, y + reach * uy);
    if (height < best) {
      best = height;
      heading = { x: ux, y: uy };
    }
  }
  return heading;
}
