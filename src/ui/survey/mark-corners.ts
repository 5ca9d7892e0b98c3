import type { LonLat } from '../../geo/index.ts';
import type { HandlePlace } from '../../map/index.ts';
import { leastCorners, type MarkGeometry } from './mark-shape.ts';

/** Corners of a geometry, an area's without the one that closes it. */
export function cornersOf(geometry: MarkGeometry): LonLat[] {
  const list =
    geometry.type === 'Point'
      ? [geometry.coordinates]
      : geometry.type === 'LineString'
        ? geometry.coordinates
        : geometry.coordinates[0]!.slice(0, -1);
  return list.map(([lon, lat]) => ({ lon, lat }));
}

/** The geometry's corners with what the handle `id` does to them: a corner put elsewhere, or a new one drawn out between two. */
export function withHandleAt(geometry: MarkGeometry, id: string, at: LonLat): LonLat[] {
  const corners = cornersOf(geometry);
  const { between, index } = readHandle(id);
  return between ? corners.toSpliced(index + 1, 0, at) : corners.with(index, at);
}

/** The corners without the handle's own; null where the shape would not be left with enough of them. */
export function withoutHandle(geometry: MarkGeometry, id: string): LonLat[] | null {
  const corners = cornersOf(geometry);
  const { between, index } = readHandle(id);
  const least = leastCorners[shapeNames[geometry.type]];
  return between || corners.length <= least ? null : corners.toSpliced(index, 1);
}

/** Corners as GeoJSON of the same shape, to a centimetre. */
export function sameShape(geometry: MarkGeometry, corners: readonly LonLat[]): MarkGeometry {
  const list = corners.map(({ lon, lat }): [number, number] => [Number(lon.toFixed(7)), Number(lat.toFixed(7))]);
  if (geometry.type === 'Point') return { type: 'Point', coordinates: list[0]! };
  if (geometry.type === 'LineString') return { type: 'LineString', coordinates: list };
  return { type: 'Polygon', coordinates: [[...list, list[0]!], ...geometry.coordinates.slice(1)] };
}

/** More corners than a hand drew: a brought-in shape, moved as a whole. */
const MOST_CORNERS = 100;

/** A handle at each corner, and at the middle of each side of a line or an area; none where there are too many. */
export function handlesOf(words: string, geometry: MarkGeometry): HandlePlace[] {
  const corners = cornersOf(geometry);
  const count = corners.length;
  if (count > MOST_CORNERS) return [];
  if (geometry.type === 'Point') return [{ id: 'corner 0', words, at: corners[0]! }];
  const sides = geometry.type === 'Polygon' ? count : count - 1;
  return [
    ...corners.map((at, i) => ({ id: `corner ${i}`, words: `${words}, corner ${i + 1} of ${count}`, at })),
    ...corners.slice(0, sides).map((at, i): HandlePlace => {
      const next = corners[(i + 1) % count]!;
      return {
        id: `between ${i}`,
        words: `${words}, new corner after ${i + 1}`,
        at: { lon: (at.lon + next.lon) / 2, lat: (at.lat + next.lat) / 2 },
        between: true,
      };
    }),
  ];
}

const shapeNames = { Point: 'point', LineString: 'line', Polygon: 'area' } as const;

function readHandle(id: string): { between: boolean; index: number } {
  const [what, index] = id.split(' ');
  return { between: what === 'between', index: Number(index) };
}
