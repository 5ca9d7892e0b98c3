import type { Tags } from '../../road/index.ts';
import { UserError } from '../../units/index.ts';
import type { MapItem } from './map-item.ts';
import { parseOtherTags } from './other-tags.ts';

type Json = Record<string, unknown>;

/** Names of longitude, latitude in degrees that an old `crs` member may carry; the datum shifts among them are ignored. */
const geographic = /(CRS84|CRS83|EPSG:{1,2}(4326|4269|4258|4979))$/i;

/** Lines, areas and points of a GeoJSON object [source: rfc7946]; throws `UserError` for other coordinates than longitude, latitude. */
export function geoJsonItems(json: object, name: string): MapItem[] {
  const root = json as Json;
  refuseOtherCrs(root, name);
  const items: MapItem[] = [];
  const features = root.type === 'FeatureCollection' && Array.isArray(root.features) ? root.features : [root];
  features.forEach((feature, i) => {
    addFeature(feature, i, name, items);
  });
  return items;
}

function refuseOtherCrs(root: Json, name: string): void {
  const crs = (root.crs as { properties?: { name?: unknown } } | null | undefined)?.properties?.name;
  if (typeof crs !== 'string' || geographic.test(crs)) return;
  throw new UserError(
    'roads-crs',
    `${name} says that its coordinates are in ${crs}; save the roads as longitude and latitude (WGS 84, EPSG:4326).`,
  );
}

function addFeature(value: unknown, i: number, name: string, items: MapItem[]): void {
  if (typeof value !== 'object' || value === null) return;
  const feature = value as Json;
  const isFeature = feature.type === 'Feature';
  const properties =
    isFeature && typeof feature.properties === 'object' && feature.properties ? feature.properties : {};
  const given = feature.id ?? (properties as Json)['@id'] ?? (properties as Json).id ?? (properties as Json).osm_id;
  const id = given === undefined || given === null ? `line/${i + 1}` : String(given);
  const tags = tagsOf(properties as Json);
  const found: MapItem[] = [];
  addGeometry(isFeature ? feature.geometry : feature, id, tags, name, found);
  found.forEach((item, part) => {
    items.push(part === 0 ? item : { ...item, id: `${id}#${part + 1}` });
  });
}

/** Properties as tags: flat, nested under `tags`, or packed in an `other_tags` text; the common spellings of name mended. */
function tagsOf(properties: Json): Tags {
  const nested = typeof properties.tags === 'object' && properties.tags !== null ? (properties.tags as Json) : {};
  const tags: Record<string, string> = {};
  for (const [key, value] of Object.entries({ ...properties, ...nested })) {
    if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') tags[key] = String(value);
  }
  if (tags.other_tags !== undefined) Object.assign(tags, parseOtherTags(tags.other_tags), { other_tags: undefined });
  const name = tags.name ?? tags.NAME ?? tags.Name;
  if (name !== undefined && name !== '') tags.name = name;
  return tags;
}

function addGeometry(value: unknown, id: string, tags: Tags, name: string, items: MapItem[]): void {
  if (typeof value !== 'object' || value === null) return;
  const { type, coordinates, geometries } = value as Json;
  if (type === 'GeometryCollection' && Array.isArray(geometries)) {
    for (const geometry of geometries) addGeometry(geometry, id, tags, name, items);
    return;
  }
  if (!Array.isArray(coordinates)) return;
  const add = (shape: MapItem['shape'], line: unknown): void => {
    const flat = flatten(shape === 'point' ? [line] : line, name);
    if (flat.length >= (shape === 'point' ? 2 : 4)) items.push({ id, tags, shape, coordinates: flat });
  };
  if (type === 'Point') add('point', coordinates);
  else if (type === 'LineString') add('line', coordinates);
  else if (type === 'MultiLineString') for (const line of coordinates) add('line', line);
  else if (type === 'Polygon') add('area', coordinates[0]);
  else if (type === 'MultiPolygon')
    for (const rings of coordinates) add('area', Array.isArray(rings) ? rings[0] : null);
}

function flatten(line: unknown, name: string): Float64Array {
  if (!Array.isArray(line)) return new Float64Array(0);
  const flat: number[] = [];
  for (const position of line) {
    const [lon, lat] = Array.isArray(position) ? position : [];
    if (!Number.isFinite(lon) || !Number.isFinite(lat)) {
      throw new UserError(
        'roads-position',
        `${name} has a position that is no pair of numbers; save it again as GeoJSON with longitude and latitude.`,
      );
    }
    if (Math.abs(lon) > 180 || Math.abs(lat) > 90) {
      throw new UserError(
        'roads-crs',
        `${name} has coordinates such as (${lon}, ${lat}), which are no longitude and latitude; save the roads in WGS 84 (EPSG:4326).`,
      );
    }
    const n = flat.length;
    if (n === 0 || flat[n - 2] !== lon || flat[n - 1] !== lat) flat.push(lon, lat);
  }
  return Float64Array.from(flat);
}
