import Flatbush from 'flatbush';
import { type LonLat, localPlane } from '../geo/index.ts';
import { ok, type Result, refuse, UserError } from '../units/index.ts';
import { joinWays, type WayJoins } from './join-ways.ts';
import type { RoadNetwork } from './network.ts';
import { legAt, type Route, type RouteLeg, routeThrough } from './routes.ts';

/** A point farther from every road than this has no roadside to study, metres (design choice). */
export const ROAD_REACH_M = 50;

/** A network made ready for questions; build once, ask often. */
export interface RoadIndex {
  readonly network: RoadNetwork;
  readonly joins: WayJoins;
  /** Boxes of all road segments in degrees; `segmentWay[i]`, `segmentVertex[i]` say which way and which first vertex. */
  readonly boxes: Flatbush | null;
  readonly segmentWay: Int32Array;
  readonly segmentVertex: Int32Array;
}

/** Where a position stands beside a road. */
export interface RoadPlace {
  readonly route: Route;
  readonly leg: RouteLeg;
  /** Index of the way under the point, in the network. */
  readonly way: number;
  /** Station of the nearest point of the road line, metres from the start of the route. */
  readonly stationM: number;
  /** Nearest point of the road line. */
  readonly position: LonLat;
  /** Distance from the line as drawn, metres, positive to the right of the way's drawing. */
  readonly offsetM: number;
}

/** Indexes the segments of all roads. */
export function indexRoads(network: RoadNetwork): RoadIndex {
  const count = network.ways.reduce((sum, { line }) => sum + line.length / 2 - 1, 0);
  const boxes = count > 0 ? new Flatbush(count) : null;
  const segmentWay = new Int32Array(count);
  const segmentVertex = new Int32Array(count);
  let i = 0;
  network.ways.forEach(({ line }, way) => {
    for (let k = 0; k + 3 < line.length; k += 2) {
      const [x0, y0, x1, y1] = [line[k]!, line[k + 1]!, line[k + 2]!, line[k + 3]!];
      boxes!.add(Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1));
      segmentWay[i] = way;
      segmentVertex[i++] = k / 2;
    }
  });
  boxes?.finish();
  return { network, joins: joinWays(network), boxes, segmentWay, segmentVertex };
}

/** Road segments that may come within `reachM` of a position, as indices into the segment tables, in no special order. */
export function segmentsNear(index: RoadIndex, at: LonLat, reachM: number): number[] {
  // A degree of latitude is never shorter than 110.5 km on WGS 84; one of longitude shrinks with the cosine.
  const lat = reachM / 110_500;
  const lon = lat / Math.max(0.01, Math.cos((Math.min(89, Math.abs(at.lat) + lat) * Math.PI) / 180));
  return index.boxes?.search(at.lon - lon, at.lat - lat, at.lon + lon, at.lat + lat) ?? [];
}

/** The nearest road within 50 m of a position, or a refusal that says how far the nearest one is. */
export function roadAt(index: RoadIndex, at: LonLat): Result<RoadPlace> {
  const found = nearestSegment(index, at, ROAD_REACH_M);
  if (found && found.distanceM <= ROAD_REACH_M) return ok(placeOn(index, found));
  const far = nearestSegment(index, at, 5000);
  const where = far ? `the nearest is ${Math.round(far.distanceM)} m away` : 'the road file has none within 5 km';
  return refuse(
    new UserError(
      'no-road',
      `No road within ${ROAD_REACH_M} m of ${at.lon}, ${at.lat} (longitude, latitude): ${where}; move the point to a roadside.`,
    ),
  );
}

interface Found {
  readonly segment: number;
  readonly distanceM: number;
  readonly offsetM: number;
  readonly position: LonLat;
  /** Share of the segment before the nearest point, 0 to 1. */
  readonly along: number;
}

function nearestSegment(index: RoadIndex, at: LonLat, reachM: number): Found | null {
  const plane = localPlane(at);
  let best: { segment: number; distanceM: number; along: number; x: number; y: number; side: number } | null = null;
  for (const segment of segmentsNear(index, at, reachM)) {
    const { line } = index.network.ways[index.segmentWay[segment]!]!;
    const k = 2 * index.segmentVertex[segment]!;
    const a = plane.toLocal({ lon: line[k]!, lat: line[k + 1]! });
    const b = plane.toLocal({ lon: line[k + 2]!, lat: line[k + 3]! });
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    const squared = dx * dx + dy * dy;
    const along = squared > 0 ? Math.min(1, Math.max(0, -(a.x * dx + a.y * dy) / squared)) : 0;
    const x = a.x + along * dx;
    const y = a.y + along * dy;
    const distanceM = Math.hypot(x, y);
    // The point is the plane's origin, so it lies right of the drawing where the cross product of (dx, dy) and (−x, −y) is negative.
    if (best === null || distanceM < best.distanceM)
      best = { segment, distanceM, along, x, y, side: dx * -y - dy * -x };
  }
  if (best === null) return null;
  const { segment, distanceM, along, side } = best;
  return { segment, distanceM, along, offsetM: side < 0 ? distanceM : -distanceM, position: plane.toLonLat(best) };
}

function placeOn(index: RoadIndex, { segment, along, offsetM, position }: Found): RoadPlace {
  const way = index.segmentWay[segment]!;
  const route = routeThrough(index.network, index.joins, way);
  const leg = route.legs.find((l) => l.way === way)!;
  const firstVertex = vertexAt(route, leg.fromM) + index.segmentVertex[segment]!;
  const from = route.stationM[firstVertex]!;
  const stationM = from + along * (route.stationM[firstVertex + 1]! - from);
  return { route, leg: leg ?? legAt(route, stationM), way, stationM, position, offsetM };
}

const vertexAt = (route: Route, stationM: number): number => route.stationM.indexOf(stationM);
