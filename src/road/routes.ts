import { geodesicM } from '../geo/index.ts';
import type { WayJoins } from './join-ways.ts';
import type { RoadNetwork } from './network.ts';

/** The part of a route that one way gives: stations `fromM` to `toM`, drawn along the route or against it. */
export interface RouteLeg {
  readonly way: number;
  readonly reversed: boolean;
  readonly fromM: number;
  readonly toM: number;
}

/**
 * Ways joined end to end, in the drawing direction of the way it was asked for. `line` holds lon, lat pairs in degrees
 * (stride 2), `stationM` the geodesic distance of each vertex from the start of the route, metres.
 */
export interface Route {
  readonly name: string | null;
  readonly line: Float64Array;
  readonly stationM: Float64Array;
  readonly lengthM: number;
  readonly legs: readonly RouteLeg[];
}

/** The route that holds `way`, in that way's drawing direction; the same route for every way drawn the same way round. */
export function routeThrough(network: RoadNetwork, joins: WayJoins, way: number): Route {
  const routes = known.get(joins) ?? new Map<number, Route>();
  known.set(joins, routes);
  const route = routes.get(way) ?? measuredRoute(network, joins, way);
  routes.set(way, route);
  return route;
}

/** Geodesics along a whole road take longer than all else that is asked of a point beside it: each is measured once. */
const known = new WeakMap<WayJoins, Map<number, Route>>();

function measuredRoute(network: RoadNetwork, joins: WayJoins, way: number): Route {
  const walk = walkBack(joins, way);
  const vertices: number[] = [];
  const stations: number[] = [];
  const legs: RouteLeg[] = [];
  let station = 0;
  for (const { way: index, reversed } of walk) {
    const { line } = network.ways[index]!;
    const count = line.length / 2;
    const fromM = station;
    for (let k = 0; k < count; k++) {
      const at = 2 * (reversed ? count - 1 - k : k);
      const lon = line[at]!;
      const lat = line[at + 1]!;
      if (k === 0 && vertices.length > 0) continue;
      const n = vertices.length;
      if (n > 0) station += geodesicM({ lon: vertices[n - 2]!, lat: vertices[n - 1]! }, { lon, lat });
      vertices.push(lon, lat);
      stations.push(station);
    }
    legs.push({ way: index, reversed, fromM, toM: station });
  }
  return {
    name: network.ways[way]!.name,
    line: Float64Array.from(vertices),
    stationM: Float64Array.from(stations),
    lengthM: station,
    legs,
  };
}

/** The leg at a station; the last one past the end. */
export const legAt = (route: Route, stationM: number): RouteLeg =>
  route.legs.find(({ toM }) => stationM <= toM) ?? route.legs.at(-1)!;

/** Walks from `way` back to the route's start, then forward to its end; a ring starts with its lowest way number. */
function walkBack(joins: WayJoins, way: number): { way: number; reversed: boolean }[] {
  let first = 2 * way;
  for (let before = joins[first]!; before !== -1 && before >> 1 !== way; before = joins[first]!) {
    first = before ^ 1;
  }
  const isRing = joins[first] !== -1;
  if (isRing) first = 2 * way;
  const walk: { way: number; reversed: boolean }[] = [];
  for (let start = first; start !== -1; ) {
    walk.push({ way: start >> 1, reversed: (start & 1) === 1 });
    start = joins[start ^ 1]!;
    if (isRing && start === first) break;
  }
  const lowest = isRing ? walk.findIndex((leg) => walk.every(({ way: other }) => leg.way <= other)) : 0;
  return [...walk.slice(lowest), ...walk.slice(0, lowest)];
}
