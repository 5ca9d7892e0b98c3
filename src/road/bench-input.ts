import type { Mark } from '../book/index.ts';
import type { LocalPlane } from '../geo/index.ts';
import type { Ground } from '../terrain/index.ts';
import { mediansOf, type OtherRoad } from './medians.ts';
import { type RoadIndex, segmentsNear } from './nearest.ts';
import type { MapFeature } from './network.ts';
import type { Obstacle } from './obstacles.ts';
import type { Route } from './routes.ts';
import { routePart, type StationedLine } from './stationed-line.ts';
import type { Span } from './structures.ts';
import { readRoadTags } from './tags.ts';
import type { Setbacks } from './usable.ts';

/** What the bench of a stretch of road is found from; all geometry in local metres. */
export interface BenchInput {
  readonly ground: Ground;
  /** The road line as drawn, stationed from the start of its route; longer than the stretch where the road is. */
  readonly line: StationedLine;
  /** Points of other roads, and of this road beyond `line`, about 2 m apart, stride 2: sections end half-way to them. */
  readonly rest: Float64Array;
  /** Tagged bridges and tunnels. */
  readonly structures: readonly Span[];
  readonly obstacles: readonly Obstacle[];
  /** Stretches whose side (−1 left, 1 right) is the median of a divided road. */
  readonly medians: readonly (Span & { readonly side: -1 | 1 })[];
  /** Carriageway widths along the road, as tagged or assumed; used where the ground is too coarse to show the bench. */
  readonly carriageway: readonly (Span & { readonly widthM: number; readonly rule: string })[];
  readonly setbacks: Setbacks;
}

/** Road line kept beyond the stretch, metres: for smoothing, filters and the other arm of a hairpin. */
const LINE_MARGIN_M = 60;
/** Nothing farther than this beyond the stretch can cut a section, metres. */
const REST_MARGIN_M = 100;
const REST_STEP_M = 2;

/** Gathers what lies around a stretch of a route, `halfM` each way of `stationM`, for `findBench`. */
export function benchInput(
  roads: RoadIndex,
  route: Route,
  ground: Ground,
  marks: readonly Mark[],
  setbacks: Setbacks,
  stationM: number,
  halfM: number,
): BenchInput {
  const { plane } = ground;
  const { ways, features } = roads.network;
  const line = routePart(route, plane, stationM - halfM - LINE_MARGIN_M, stationM + halfM + LINE_MARGIN_M);
  const reachM = halfM + REST_MARGIN_M;
  const others = otherRoads(roads, route, plane, line, reachM);
  const tagged = route.legs.map(({ way, fromM, toM, reversed }) => ({
    fromM,
    toM,
    way,
    reversed,
    traits: readRoadTags(ways[way].tags),
  }));
  return {
    ground,
    line,
    rest: Float64Array.from([
      ...others.flatMap(({ points }) => [...points]),
      ...routeBeyond(route, plane, line, reachM),
    ]),
    structures: tagged.filter(({ traits }) => traits.bridge || traits.tunnel),
    obstacles: [
      ...features.flatMap((f) => mappedObstacle(f, plane, reachM)),
      ...marks.flatMap((m) => markedObstacle(m, plane)),
    ],
    medians: mediansOf(line, tagged, ways, others),
    carriageway: tagged.map(({ fromM, toM, traits }) => ({
      fromM,
      toM,
      widthM: traits.carriageway.valueM,
      rule: traits.carriageway.rule,
    })),
    setbacks,
  };
}

function otherRoads(
  roads: RoadIndex,
  route: Route,
  plane: LocalPlane,
  line: StationedLine,
  reachM: number,
): OtherRoad[] {
  const own = new Set(route.legs.map(({ way }) => way));
  const middle = line.x.length >> 1;
  const at = plane.toLonLat({ x: line.x[middle] ?? 0, y: line.y[middle] ?? 0 });
  const byWay = new Map<number, number[]>();
  for (const segment of segmentsNear(roads, at, reachM).sort((a, b) => a - b)) {
    const way = roads.segmentWay[segment];
    if (own.has(way)) continue;
    const k = 2 * roads.segmentVertex[segment];
    const points = byWay.get(way) ?? [];
    byWay.set(way, points);
    const vertices = roads.network.ways[way].line;
    const a = plane.toLocal({ lon: vertices[k], lat: vertices[k + 1] });
    const b = plane.toLocal({ lon: vertices[k + 2], lat: vertices[k + 3] });
    addPoints(points, a.x, a.y, b.x, b.y);
  }
  return [...byWay].map(([way, points]) => ({ way, points: Float64Array.from(points) }));
}

/** The route's own line before and after the part in use, as far as it comes near again. */
function routeBeyond(route: Route, plane: LocalPlane, line: StationedLine, reachM: number): number[] {
  const points: number[] = [];
  const from = line.stationM[0] ?? 0;
  const to = line.stationM.at(-1) ?? 0;
  for (const part of [routePart(route, plane, from - 4 * reachM, from), routePart(route, plane, to, to + 4 * reachM)]) {
    for (let k = 0; k + 1 < part.x.length; k++) addPoints(points, part.x[k], part.y[k], part.x[k + 1], part.y[k + 1]);
  }
  return points;
}

function addPoints(points: number[], ax: number, ay: number, bx: number, by: number): void {
  const n = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / REST_STEP_M));
  for (let i = 0; i < n; i++) points.push(ax + ((bx - ax) * i) / n, ay + ((by - ay) * i) / n);
}

function mappedObstacle({ kind, coordinates }: MapFeature, plane: LocalPlane, reachM: number): Obstacle[] {
  if (kind !== 'barrier' && kind !== 'wall') return [];
  const line = toPlane(coordinates, plane);
  const near = line.some((_, i) => i % 2 === 0 && Math.hypot(line[i], line[i + 1]) < 2 * reachM);
  return near ? [{ kind, line, mapped: true }] : [];
}

function markedObstacle({ kind, geometry }: Mark, plane: LocalPlane): Obstacle[] {
  if ((kind !== 'barrier' && kind !== 'wall') || geometry.type !== 'LineString') return [];
  return [
    {
      kind,
      line: toPlane(Float64Array.from(geometry.coordinates.flat()), plane),
      mapped: false,
    },
  ];
}

function toPlane(lonLat: Float64Array, plane: LocalPlane): Float64Array {
  const out = new Float64Array(lonLat.length);
  for (let i = 0; i + 1 < lonLat.length; i += 2) {
    const { x, y } = plane.toLocal({ lon: lonLat[i], lat: lonLat[i + 1] });
    out[i] = x;
    out[i + 1] = y;
  }
  return out;
}
