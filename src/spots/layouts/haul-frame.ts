import type { Descent } from '../../descent/index.ts';
import type { PointM } from '../../geo/index.ts';
import { type Bench, edgeKindAt } from '../../road/index.ts';
import { toRadians } from '../../units/index.ts';
import { nearestElement } from '../bench-place.ts';
import type { StandingGround } from '../standing-ground.ts';

/** The site as a haul sees it: where the descent starts, which way it leads back, and the road beside it. */
export interface HaulFrame {
  readonly ground: StandingGround;
  readonly bench: Bench;
  readonly edge: PointM;
  /** Unit vector of the descent produced backwards, away from the edge. */
  readonly back: PointM;
  /** Unit vector of the road's direction of drawing at the edge. */
  readonly road: PointM;
  /** Element of the bench at the edge. */
  readonly element: number;
  readonly side: -1 | 1;
  /** Of the road at the edge, as a share, whichever way. */
  readonly grade: number;
  readonly mostResets: number;
}

export function haulFrame(ground: StandingGround, { line }: Descent, mostResets: number): HaulFrame {
  const { bench } = ground;
  const { start, direction } = line;
  const element = nearestElement(bench, start.x, start.y);
  return {
    ground,
    bench,
    edge: start,
    back: { x: -direction.x, y: -direction.y },
    road: { x: -bench.normalY[element], y: bench.normalX[element] },
    element,
    side: ground.site?.side ?? 1,
    grade: Math.abs(Math.tan(toRadians(bench.gradeDeg[element]))),
    mostResets,
  };
}

/** Stations of edge either side that can be the nearest to a point near the site. */
const BEYOND = 15;

/** Distance from a point near the site to the edge on the site's side, metres; 0 past it, infinite where there is none. */
export function behindEdgeM({ bench, element, side }: HaulFrame, x: number, y: number): number {
  const edge = side < 0 ? bench.left : bench.right;
  let least = Number.POSITIVE_INFINITY;
  const to = Math.min(bench.count - 2, element + BEYOND);
  for (let i = Math.max(0, element - BEYOND); i <= to; i++) {
    const ax = edge.edgeX[i];
    const ay = edge.edgeY[i];
    const dx = edge.edgeX[i + 1] - ax;
    const dy = edge.edgeY[i + 1] - ay;
    if (Number.isNaN(ax + dx) || edgeKindAt(edge, i) === 'none') continue;
    const square = dx * dx + dy * dy;
    const t = square > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / square)) : 0;
    const px = x - ax - t * dx;
    const py = y - ay - t * dy;
    least = Math.min(least, Math.sqrt(px * px + py * py));
  }
  return least;
}
