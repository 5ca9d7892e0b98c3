import * as v from 'valibot';
import { number } from './fields.ts';

/** Longitude and latitude, WGS 84 degrees; a height that a file brings along is dropped. */
const corner = v.pipe(
  v.array(v.number()),
  v.check((list) => list.length === 2 || list.length === 3, 'expected longitude and latitude'),
  v.transform((list) => list.slice(0, 2)),
  v.tuple([number(-180, 180), number(-90, 90)]),
);

const ring = v.pipe(
  v.array(corner),
  v.check((list) => list.length >= 4 && list.length <= 10_000, 'expected 4 to 10000 corners'),
  v.check((list) => {
    const [first, last] = [list[0]!, list.at(-1)!];
    return first[0] === last[0] && first[1] === last[1];
  }, 'expected a ring that ends where it begins'),
);

const point = v.strictObject({ type: v.literal('Point'), coordinates: corner });
const lineString = v.strictObject({
  type: v.literal('LineString'),
  coordinates: v.pipe(
    v.array(corner),
    v.check((list) => list.length >= 2 && list.length <= 10_000, 'expected 2 to 10000 corners'),
  ),
});
const rings = v.pipe(
  v.array(ring),
  v.check((list) => list.length >= 1 && list.length <= 100, 'expected 1 to 100 rings'),
);
const polygon = v.strictObject({ type: v.literal('Polygon'), coordinates: rings });
const multiPolygon = v.strictObject({
  type: v.literal('MultiPolygon'),
  coordinates: v.pipe(
    v.array(rings),
    v.check((list) => list.length >= 1 && list.length <= 1000, 'expected 1 to 1000 areas'),
  ),
});

/** Point, line or area, GeoJSON (RFC 7946), longitude first. One value: a shape is never half one person's. */
export const markGeometry = v.variant('type', [point, lineString, polygon]);
/** One area or several, GeoJSON. */
export const area = v.variant('type', [polygon, multiPolygon]);

export type Area = v.InferOutput<typeof area>;
