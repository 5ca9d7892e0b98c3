import type { Feature, Geometry } from 'geojson';
import { UserError } from '../../units/index.ts';

/** Features of a GeoJSON text: a FeatureCollection, a Feature or a bare geometry [source: rfc7946]. */
export function readGeoJsonFeatures(
  text: string,
  file: string,
): { where: string; feature: Feature<Geometry | null> }[] {
  const refuse = (why: string): UserError => new UserError('geojson', `${file} ${why}; export it again as GeoJSON.`);
  let json: unknown;
  try {
    json = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    throw refuse('is not JSON');
  }
  if (!isObject(json)) throw refuse('is JSON but no GeoJSON');
  if (isObject(json.crs) && !/CRS84|4326/.test(JSON.stringify(json.crs))) {
    throw refuse('names a coordinate system of its own, while GeoJSON is in WGS 84 longitude and latitude');
  }
  const list =
    json.type === 'FeatureCollection'
      ? json.features
      : json.type === 'Feature'
        ? [json]
        : [{ type: 'Feature', geometry: json }];
  if (!Array.isArray(list)) throw refuse('has no list of features');
  return list.map((raw: unknown, i) => {
    const given = isObject(raw) ? raw : {};
    const shape = isObject(given.geometry) && isShape(given.geometry) ? (given.geometry as unknown as Geometry) : null;
    const feature: Feature<Geometry | null> = {
      type: 'Feature',
      geometry: shape,
      properties: isObject(given.properties) ? given.properties : null,
      ...(typeof given.id === 'string' ? { id: given.id } : {}),
    };
    return { where: `feature ${i + 1}`, feature };
  });
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const depths: Readonly<Record<string, number>> = { Point: 0, LineString: 1, Polygon: 2, MultiPolygon: 3 };

/** True for the shapes that are read, with numbers as deep as they belong. */
function isShape({ type, coordinates }: Record<string, unknown>): boolean {
  const depth = typeof type === 'string' && Object.hasOwn(depths, type) ? depths[type]! : null;
  return depth !== null && isNested(coordinates, depth);
}

const isNested = (value: unknown, depth: number): boolean =>
  Array.isArray(value) &&
  value.length > 0 &&
  (depth === 0
    ? value.length >= 2 && value.every((number) => typeof number === 'number' && Number.isFinite(number))
    : value.every((part) => isNested(part, depth - 1)));
