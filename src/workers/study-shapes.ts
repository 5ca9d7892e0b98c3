import type { Feature, FeatureCollection, Position } from 'geojson';
import type { LocalPlane, PointM } from '../geo/index.ts';
import type { RoadPlace, Route } from '../road/index.ts';
import type { Study } from '../study/index.ts';
import { pointOnRoute } from './point-on-route.ts';

/** Half the length over which the road's direction is taken, metres, as the sections do. */
const DIRECTION_M = 5;
/** Neighbouring stations whose edges lie farther apart than this are not joined, metres. */
const JUMP_M = 4;

/**
 * A study's measured lines for a map, as GeoJSON: the edges of the road bench (`what` "edge", with `side`, and `drop` where the
 * ground falls away beyond it) and the descent (`what` "descent").
 */
export function studyShapes(study: Study, place: RoadPlace, plane: LocalPlane): FeatureCollection {
  const features: Feature[] = [];
  const line = (points: Position[], properties: Record<string, unknown>): void => {
    if (points.length > 1) {
      features.push({ type: 'Feature', properties, geometry: { type: 'LineString', coordinates: points } });
    }
  };
  for (const side of ['left', 'right'] as const) {
    let run: Position[] = [];
    let kind: string | null = null;
    let last: PointM | null = null;
    const finish = (): void => {
      line(run, { what: 'edge', side, drop: kind === 'drop' });
      run = [];
    };
    for (const station of study.bench?.stations ?? []) {
      const offsetM = side === 'left' ? station.leftEdgeOffsetM : station.rightEdgeOffsetM;
      const kindHere = side === 'left' ? station.leftEdgeKind : station.rightEdgeKind;
      const at = offsetM === null ? null : offsetFrom(place.route, plane, station.stationM, offsetM);
      if (!at || !last || Math.hypot(at.x - last.x, at.y - last.y) > JUMP_M) finish();
      if (at) {
        const { lon, lat } = plane.toLonLat(at);
        // The point where one kind ends begins the next, so that the edge has no gap there.
        if (kindHere !== kind && run.length > 0) {
          run.push([lon, lat]);
          finish();
        }
        kind = kindHere;
        run.push([lon, lat]);
      }
      last = at;
    }
    finish();
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
function offsetFrom(route: Route, plane: LocalPlane, stationM: number, offsetM: number): PointM | null {
  if (stationM < 0 || stationM > route.lengthM) return null;
  const here = pointOnRoute(route, plane, stationM);
  const before = pointOnRoute(route, plane, Math.max(0, stationM - DIRECTION_M));
  const after = pointOnRoute(route, plane, Math.min(route.lengthM, stationM + DIRECTION_M));
  const dx = after.x - before.x;
  const dy = after.y - before.y;
  const length = Math.hypot(dx, dy);
  if (length === 0) return null;
  return { x: here.x + (dy / length) * offsetM, y: here.y - (dx / length) * offsetM };
}
