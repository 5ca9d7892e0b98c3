import type { LocalPlane, PointM } from '../geo/index.ts';
import { type RoadIndex, type Route, routeThrough, segmentsNear } from '../road/index.ts';

/** A point of a road line that is nearer than its neighbours, or that a way up crosses. */
export interface RoadFoot {
  readonly route: Route;
  readonly stationM: number;
  /** On the plane, metres; unit direction of the route there. */
  readonly at: PointM;
  readonly along: PointM;
  readonly distanceM: number;
  /** True where a way up from the place crosses the road here. */
  readonly traced: boolean;
}

/** Points of one route nearer to each other than this along it are one place, metres. */
const SAME_PLACE_M = 60;

/**
 * For every stretch of road within `reachM` of a plane point: its nearest point, and where `ways` (polylines up-slope, in the order
 * of their worth) cross it. A crossing stands for the nearest point of its stretch. In order along each route.
 */
export function roadFeet(
  roads: RoadIndex,
  plane: LocalPlane,
  from: PointM,
  reachM: number,
  ways: readonly { readonly x: Float64Array; readonly y: Float64Array }[],
): RoadFoot[] {
  return routesNear(roads, plane, from, reachM).flatMap((route) => {
    const line = localLine(route, plane, from, reachM);
    const crossings = ways.flatMap((way) => crossingsOf(route, line, way, from));
    const nearest = nearestPoints(route, line, from, reachM);
    const kept: RoadFoot[] = [];
    for (const foot of [...crossings, ...nearest]) {
      if (kept.every(({ stationM }) => Math.abs(stationM - foot.stationM) > SAME_PLACE_M)) kept.push(foot);
    }
    return kept.sort((a, b) => a.stationM - b.stationM);
  });
}

/** The routes with a segment within reach, each once, whatever way they are asked through. */
function routesNear(roads: RoadIndex, plane: LocalPlane, from: PointM, reachM: number): Route[] {
  const seen = new Set<number>();
  const routes: Route[] = [];
  for (const segment of segmentsNear(roads, plane.toLonLat(from), reachM)) {
    const way = roads.segmentWay[segment]!;
    if (seen.has(way)) continue;
    const route = routeThrough(roads.network, roads.joins, way);
    for (const leg of route.legs) seen.add(leg.way);
    routes.push(route);
  }
  return routes;
}

/** Segments of a route within reach of the point, plane metres: stride 5 of x0, y0, x1, y1, index of the first vertex. */
function localLine(route: Route, plane: LocalPlane, from: PointM, reachM: number): Float64Array {
  const out: number[] = [];
  let before = plane.toLocal({ lon: route.line[0]!, lat: route.line[1]! });
  for (let k = 1; k < route.stationM.length; k++) {
    const next = plane.toLocal({ lon: route.line[2 * k]!, lat: route.line[2 * k + 1]! });
    const half = Math.hypot(next.x - before.x, next.y - before.y) / 2;
    const far = Math.hypot((before.x + next.x) / 2 - from.x, (before.y + next.y) / 2 - from.y) - half;
    if (far <= reachM) out.push(before.x, before.y, next.x, next.y, k - 1);
    before = next;
  }
  return Float64Array.from(out);
}

function footOn(route: Route, line: Float64Array, i: number, t: number, from: PointM, traced: boolean): RoadFoot {
  const [x0, y0, x1, y1, k] = [line[i]!, line[i + 1]!, line[i + 2]!, line[i + 3]!, line[i + 4]!];
  const length = Math.hypot(x1 - x0, y1 - y0) || 1;
  const at = { x: x0 + t * (x1 - x0), y: y0 + t * (y1 - y0) };
  return {
    route,
    stationM: route.stationM[k]! + t * (route.stationM[k + 1]! - route.stationM[k]!),
    at,
    along: { x: (x1 - x0) / length, y: (y1 - y0) / length },
    distanceM: Math.hypot(at.x - from.x, at.y - from.y),
    traced,
  };
}

/** Where the distance to the road has a minimum, nearest first. */
function nearestPoints(route: Route, line: Float64Array, from: PointM, reachM: number): RoadFoot[] {
  const feet: RoadFoot[] = [];
  for (let i = 0; i < line.length; i += 5) {
    const dx = line[i + 2]! - line[i]!;
    const dy = line[i + 3]! - line[i + 1]!;
    const squared = dx * dx + dy * dy;
    const t = squared > 0 ? ((from.x - line[i]!) * dx + (from.y - line[i + 1]!) * dy) / squared : 0;
    feet.push(footOn(route, line, i, Math.min(1, Math.max(0, t)), from, false));
  }
  const isMinimum = (foot: RoadFoot): boolean =>
    feet.every(
      (other) => Math.abs(other.stationM - foot.stationM) > SAME_PLACE_M || other.distanceM >= foot.distanceM - 1e-9,
    );
  return feet
    .filter((foot) => foot.distanceM <= reachM && isMinimum(foot))
    .sort((a, b) => a.distanceM - b.distanceM || a.stationM - b.stationM);
}

/** Where a way crosses the road, in the order of the way. */
function crossingsOf(
  route: Route,
  line: Float64Array,
  way: { readonly x: Float64Array; readonly y: Float64Array },
  from: PointM,
): RoadFoot[] {
  const found: RoadFoot[] = [];
  for (let w = 0; w + 1 < way.x.length; w++) {
    const [ax, ay, bx, by] = [way.x[w]!, way.y[w]!, way.x[w + 1]!, way.y[w + 1]!];
    for (let i = 0; i < line.length; i += 5) {
      const dx = line[i + 2]! - line[i]!;
      const dy = line[i + 3]! - line[i + 1]!;
      const cross = (bx - ax) * dy - (by - ay) * dx;
      if (cross === 0) continue;
      const s = ((line[i]! - ax) * dy - (line[i + 1]! - ay) * dx) / cross;
      const t = ((line[i]! - ax) * (by - ay) - (line[i + 1]! - ay) * (bx - ax)) / cross;
      if (s >= 0 && s < 1 && t >= 0 && t <= 1) found.push(footOn(route, line, i, t, from, true));
    }
  }
  return found;
}
