import type { Geometry, Position } from 'geojson';
import type { Mark, MarkKind } from '../book/index.ts';
import type { LocalPlane } from '../geo/index.ts';
import type { MapFeature } from '../road/index.ts';

/** Something marked or mapped that apparatus must respect; `xy` are local metres, stride 2, closed for an area. */
export interface Hazard {
  readonly id: string;
  readonly kind: MarkKind;
  readonly shape: 'point' | 'line' | 'area';
  readonly xy: Float64Array;
}

/**
 * How far an apparatus stays off each kind of mark, metres from its outline (common practice, no source). A point of soft
 * ground or of a culvert stands for ground of that size around it. Kinds without an entry do not matter to it.
 */
export const KEEP_OFF_M: Partial<Readonly<Record<MarkKind, number>>> = {
  tree: 0.5,
  rock: 0.5,
  pole: 1,
  wire: 3,
  gate: 1,
  culvert: 1.5,
  water: 2,
  'soft ground': 1,
  barrier: 0,
  wall: 0.5,
  step: 1.5,
  sign: 0.5,
};

/** A point of soft ground is taken for a patch of this radius, one of firm ground for one of that, metres (practice). */
export const SOFT_POINT_M = 3;
export const FIRM_POINT_M = 1.5;

/** The marks of a site and the features mapped around it, on its local plane. */
export function hazardsOf(marks: readonly Mark[], features: readonly MapFeature[], plane: LocalPlane): Hazard[] {
  return [
    ...marks.flatMap(({ id, kind, geometry }) =>
      shapesOf(geometry).map(({ shape, positions }) => ({ id, kind, shape, xy: toPlane(positions, plane) })),
    ),
    ...features.flatMap(({ id, kind, shape, coordinates }) => {
      const as = mappedAs[kind];
      return as ? [{ id, kind: as, shape, xy: toPlane([...pairs(coordinates)], plane) }] : [];
    }),
  ];
}

/** What a mapped feature counts as; kinds without an entry do not matter at a roadside. */
export const mappedAs: Partial<Record<MapFeature['kind'], MarkKind>> = {
  water: 'water',
  wire: 'wire',
  pole: 'pole',
  barrier: 'barrier',
  wall: 'wall',
  cliff: 'step',
};

type Shape = { shape: Hazard['shape']; positions: readonly Position[] };

function shapesOf(geometry: Geometry): Shape[] {
  switch (geometry.type) {
    case 'Point':
      return [{ shape: 'point', positions: [geometry.coordinates] }];
    case 'MultiPoint':
      return geometry.coordinates.map((position) => ({ shape: 'point', positions: [position] }));
    case 'LineString':
      return [{ shape: 'line', positions: geometry.coordinates }];
    case 'MultiLineString':
      return geometry.coordinates.map((positions) => ({ shape: 'line', positions }));
    case 'Polygon':
      return geometry.coordinates.slice(0, 1).map((positions) => ({ shape: 'area', positions }));
    case 'MultiPolygon':
      return geometry.coordinates.flatMap(([ring]) => (ring ? [{ shape: 'area' as const, positions: ring }] : []));
    case 'GeometryCollection':
      return geometry.geometries.flatMap(shapesOf);
  }
}

function* pairs(flat: Float64Array): Generator<Position> {
  for (let k = 0; k + 1 < flat.length; k += 2) yield [flat[k], flat[k + 1]];
}

function toPlane(positions: readonly Position[], plane: LocalPlane): Float64Array {
  const xy = new Float64Array(2 * positions.length);
  positions.forEach(([lon, lat], k) => {
    const point = plane.toLocal({ lon, lat });
    xy[2 * k] = point.x;
    xy[2 * k + 1] = point.y;
  });
  return xy;
}
