import type { Feature, FeatureCollection, Position } from 'geojson';
import type { LocalPlane } from '../geo/index.ts';
import type { RoadPlace, Route } from '../road/index.ts';
import type { Study } from '../study/index.ts';

/** Half the length over which the road's direction is taken, metres, as the sections do. */
const DIRECTION_M = 5;

/**
 * A study's measured lines for a map, as GeoJSON: the edges of the road bench (`what` "edge", with `side`, and `drop` on the
 * study's own side) and the descent (`what` "descent").
 */
export function studyShapes(study: Study, place: RoadPlace, plane: LocalPlane): FeatureCollection {
  const features: Feature[] = [];
  const line = (points: Position[], properties: Record<string, unknown>): void => {
    if (points.length > 1) {
      features.push({ type: 'Feature', properties, geometry: { type: 'LineString', coordinates: points } });
    }
  };
  for (const side of ['left', 'right'] as const) {
    const properties = { what: 'edge', side, drop: side === study.site.side && study.edge !== null };
    let run: Position[] = [];
    for (const station of study.bench?.stations ?? []) {
      const offsetM = side === 'left' ? station.leftEdgeOffsetM : station.rightEdgeOffsetM;
      const at = offsetM === null ? null : offsetFrom(place.route, plane, station.stationM, offsetM);
      if (at) run.push(at);
      else {
        line(run, properties);
        run = [];
      }
    }
    line(run, properties);
  }
  if (study.edge && study.descent) {
    const { edge, descent } = study;
    line(
      [
        [edge.lon, edge.lat],
        [descent.end.lon, descent.end.lat],
      ],
      { what: 'descent' },
    );
  }
  return { type: 'FeatureCollection', features };
}

/** The point `offsetM` to the right of a route at a station, or null past the route's ends. */
function offsetFrom(route: Route, plane: LocalPlane, stationM: number, offsetM: number): Position | null {
  if (stationM < 0 || stationM > route.lengthM) return null;
  const here = pointAt(route, plane, stationM);
  const before = pointAt(route, plane, Math.max(0, stationM - DIRECTION_M));
  const after = pointAt(route, plane, Math.min(route.lengthM, stationM + DIRECTION_M));
  const dx = after.x - before.x;
  const dy = after.y - before.y;
  const length = Math.hypot(dx, dy);
  if (length === 0) return null;
  const { lon, lat } = plane.toLonLat({ x: here.x + (dy / length) * offsetM, y: here.y - (dx / length) * offsetM });
  return [lon, lat];
}

function pointAt({ line, stationM }: Route, plane: LocalPlane, at: number): { x: number; y: number } {
  let low = 0;
  let high = stationM.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (stationM[middle]! <= at) low = middle;
    else high = middle;
  }
  const a = plane.toLocal({ lon: line[2 * low]!, lat: line[2 * low + 1]! });
  const b = plane.toLocal({ lon: line[2 * high]!, lat: line[2 * high + 1]! });
  const run = stationM[high]! - stationM[low]!;
  const t = run > 0 ? (at - stationM[low]!) / run : 0;
  return { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
}
