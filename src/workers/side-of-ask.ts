import { type LonLat, localPlane } from '../geo/index.ts';
import type { RoadPlace } from '../road/index.ts';
import type { Side } from '../study/index.ts';
import { pointOnRoute } from './point-on-route.ts';

/** A point this near the road line has no side of its own, metres: half a lane would be a coin's toss. */
const ON_THE_LINE_M = 0.5;
/** Half the length over which the road's direction is taken, metres, as the sections do. */
const DIRECTION_M = 5;

/**
 * Which side of the road a study is asked for: one of the road as drawn, the one that the point lies on, the one that looks along
 * a true azimuth (as a site keeps it, whatever way the road is drawn), or null for the side that drops.
 */
export type SideAsked = Side | 'of the point' | { readonly azimuthDeg: number } | null;

/** The side of the road as drawn. */
export function sideOfAsk(asked: SideAsked, at: LonLat, { route, stationM, offsetM }: RoadPlace): Side | null {
  if (asked === null || asked === 'left' || asked === 'right') return asked;
  if (asked === 'of the point') return Math.abs(offsetM) < ON_THE_LINE_M ? null : offsetM < 0 ? 'left' : 'right';
  const plane = localPlane(at);
  const before = pointOnRoute(route, plane, Math.max(0, stationM - DIRECTION_M));
  const after = pointOnRoute(route, plane, Math.min(route.lengthM, stationM + DIRECTION_M));
  const azimuth = (asked.azimuthDeg * Math.PI) / 180;
  const across = (after.y - before.y) * Math.sin(azimuth) - (after.x - before.x) * Math.cos(azimuth);
  return across >= 0 ? 'right' : 'left';
}
