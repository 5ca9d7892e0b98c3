import type { PointM } from '../geo/index.ts';
import { FALL_LINE_LIMIT_M } from './fall-line.ts';
import { type Hill, heightAtPoint } from './hill.ts';
import { segmentMeets } from './shapes.ts';
import { compassAt, stepOn } from './straight-on.ts';

/** Longest step, metres; the edge is a line of points about a metre apart. */
const LONGEST_STEP_M = 2.5;

/**
 * Where the up-slope line from `from` first meets the edge of the bench (`edge`: x, y pairs along the road), or null where
 * it does not within 300 m or runs out of data. `toward` is the unit vector to set out on where the ground is flat.
 */
export function upSlopeToEdge(hill: Hill, from: PointM, toward: PointM, edge: Float64Array): PointM | null {
  const stepM = Math.min(hill.cellM / 2, LONGEST_STEP_M);
  const steps = Math.ceil(FALL_LINE_LIMIT_M / stepM);
  const compass = compassAt(toward.x, toward.y);
  const to = Float64Array.of(from.x, from.y);
  for (let i = 0; i < steps; i++) {
    const [x, y] = to;
    stepOn(hill, x, y, stepM, compass, 1, to);
    const [first] = segmentMeets(edge, x, y, to[0], to[1]);
    if (first !== undefined) return { x: x + first * (to[0] - x), y: y + first * (to[1] - y) };
    if (!Number.isFinite(heightAtPoint(hill, to[0], to[1]))) return null;
  }
  return null;
}

/** The point of the edge that is nearest to `from`; used where no up-slope line reaches it. */
export function nearestOnEdge(from: PointM, edge: Float64Array): PointM {
  let best = Infinity;
  let point: PointM = { x: edge[0], y: edge[1] };
  for (let i = 0; i + 1 < edge.length; i += 2) {
    const last = i + 3 >= edge.length;
    const dx = last ? 0 : edge[i + 2] - edge[i];
    const dy = last ? 0 : edge[i + 3] - edge[i + 1];
    const length2 = dx * dx + dy * dy;
    const along = length2 > 0 ? ((from.x - edge[i]) * dx + (from.y - edge[i + 1]) * dy) / length2 : 0;
    const t = Math.min(1, Math.max(0, along));
    const x = edge[i] + t * dx;
    const y = edge[i + 1] + t * dy;
    const d = Math.hypot(from.x - x, from.y - y);
    if (d < best) {
      best = d;
      point = { x, y };
    }
  }
  return point;
}
