import type { Geometry, Position as GeoPosition } from 'geojson';
import type { Mark, MarkKind } from '../book/index.ts';
import { distanceToLine } from '../descent/index.ts';
import type { PointM } from '../geo/index.ts';
import type { MapFeature } from '../road/index.ts';
import { mappedAs } from '../spots/index.ts';
import type { GroundInputs } from './inputs.ts';
import { featuresNear, lineNear } from './near.ts';
import { lonLatDegrees } from './rounded.ts';
import type { StudyMark } from './study.ts';
import { markLine, toLocal } from './surroundings.ts';

/** A mark or mapped thing near the site, and how near it comes to the descent, metres. */
export interface NearMark extends StudyMark {
  readonly distanceM: number;
}

/** Told of a site within this, metres. */
const LISTED_M = 150;
/** Points along the descent from which distances are taken, metres apart. */
const STEP_M = 2;

/** What was marked or mapped within 150 m of the site or its descent, nearest first. */
export function marksNear(inputs: GroundInputs, from: PointM, to: PointM): NearMark[] {
  const { ground, marks, roads } = inputs;
  const { plane } = ground;
  const reachM = LISTED_M + Math.hypot(to.x, to.y) + Math.hypot(from.x, from.y);
  const found: NearMark[] = [];
  const add = (mark: StudyMark, lonLat: Float64Array): void => {
    if (!lineNear(lonLat, plane.origin, reachM)) return;
    const distanceM = distanceToDescent(toLocal(lonLat, plane), from, to);
    if (distanceM <= LISTED_M) found.push({ ...mark, distanceM });
  };
  for (const mark of marks) {
    const line = markLine(mark);
    if (line) add(partOf(mark), line);
  }
  for (const feature of featuresNear(roads.network.features, plane.origin, reachM)) {
    const kind = mappedAs[feature.kind];
    if (kind) add(mapped(feature, kind), feature.coordinates);
  }
  return found.sort((a, b) => a.distanceM - b.distanceM || (a.id < b.id ? -1 : 1));
}

const partOf = ({ id, kind, name, geometry }: Mark): StudyMark => ({ id, kind, name, geometry });

function mapped({ id, shape, coordinates, tags }: MapFeature, kind: MarkKind): StudyMark {
  const positions: GeoPosition[] = [];
  for (let k = 0; k + 1 < coordinates.length; k += 2) {
    positions.push([lonLatDegrees(coordinates[k]!), lonLatDegrees(coordinates[k + 1]!)]);
  }
  const geometry: Geometry =
    shape === 'point'
      ? { type: 'Point', coordinates: positions[0]! }
      : shape === 'line'
        ? { type: 'LineString', coordinates: positions }
        : { type: 'Polygon', coordinates: [positions] };
  return { id, kind, name: tags.name ?? null, geometry };
}

function distanceToDescent(line: Float64Array, from: PointM, to: PointM): number {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const count = Math.max(1, Math.ceil(length / STEP_M));
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k <= count; k++) {
    const t = k / count;
    least = Math.min(least, distanceToLine(line, from.x + t * (to.x - from.x), from.y + t * (to.y - from.y)));
  }
  return least;
}
