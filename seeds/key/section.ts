import { type FineGround, groundAt } from '../ground/tiles.ts';
import type { RoadDesign } from '../road/road-design.ts';

/** A straight cut through the ground: start and unit direction, CRS metres. */
export interface Cut {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
}

/** The cut at right angles to a road at a station, from its middle line outward on one side. */
export function sectionOf(road: RoadDesign, side: 0 | 1, i: number): Cut {
  const sign = side === 0 ? 1 : -1;
  return { x: road.line.x[i], y: road.line.y[i], dx: -road.ty[i] * sign, dy: road.tx[i] * sign };
}

/** True height along a cut, metres. */
export const heightOn = (ground: FineGround, cut: Cut, d: number): number =>
  groundAt(ground, cut.x + cut.dx * d, cut.y + cut.dy * d);
