import type { Feature, Geometry } from 'geojson';
import { type AnyRecord, readRecord } from '../../book/index.ts';
import { UserError } from '../../units/index.ts';
import { type Placed, type PlacedTable, placedTables } from './placed.ts';

/**
 * A record as a GeoJSON feature: `properties.table` names its table, the other properties are its fields, the shape is the
 * geometry. `recordOf` gives it back.
 */
export function featureOf({ table, record, geometry }: Placed): Feature {
  const { id, deleted: _deleted, ...fields } = record as AnyRecord & Record<string, unknown>;
  const properties: Record<string, unknown> = { table, ...fields };
  if (table === 'sites') properties.sideAzimuthDeg = record.place.sideAzimuthDeg;
  if (table === 'mileMarkers') properties.mile = record.post.mile;
  delete properties[shapeField[table]];
  return { type: 'Feature', id, properties, geometry };
}

const shapeField: Readonly<Record<PlacedTable, string>> = {
  sites: 'place',
  marks: 'geometry',
  supportPlaces: 'at',
  stations: 'at',
  mileMarkers: 'post',
  events: 'area',
  crashes: 'at',
};

/** Properties that a feature of the book carries for readers and that its record does not have. */
export const derivedProperties: readonly string[] = [
  'contested',
  'lastCheckOn',
  'lastCheckMethod',
  'changedSince',
  'usng',
];

/** True for a feature that a book wrote. */
export const isOwnFeature = (properties: Readonly<Record<string, unknown>>): boolean =>
  placedTables.some((table) => table === properties.table);

/** The record of a feature that a book wrote, checked. Throws a `UserError` that names file, table, id and field. */
export function recordOf(feature: Feature, file: string): { table: PlacedTable; record: AnyRecord } {
  const properties = { ...feature.properties } as Record<string, unknown>;
  const table = placedTables.find((name) => name === properties.table)!;
  delete properties.table;
  for (const name of derivedProperties) delete properties[name];
  const { geometry } = feature;
  const at = pointOf(geometry);
  if (table === 'sites') {
    properties.place = at && { ...at, sideAzimuthDeg: properties.sideAzimuthDeg };
    delete properties.sideAzimuthDeg;
  } else if (table === 'mileMarkers') {
    properties.post = at && { mile: properties.mile, at };
    delete properties.mile;
  } else properties[shapeField[table]] = table === 'marks' || table === 'events' ? geometry : at;
  if (typeof feature.id !== 'string') {
    throw new UserError('feature-id', `${file}: a feature of table ${table} has no id; take another copy of the file.`);
  }
  return { table, record: readRecord(table, { ...properties, id: feature.id }, file) };
}

function pointOf(geometry: Geometry): { lon: number; lat: number } | null {
  if (geometry?.type !== 'Point' || !Array.isArray(geometry.coordinates)) return null;
  const [lon, lat] = geometry.coordinates as [number, number];
  return { lon, lat };
}
