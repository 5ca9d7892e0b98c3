import type { MapFeature, RoadNetwork } from '../../road/index.ts';

/** Tags that tell who mapped a thing and when, not what it is. */
const personal = /^(@.*|user|uid|changeset|timestamp|version|created_by|source|note|fixme|description|comment)$/i;

/** A road network as GeoJSON (RFC 7946) that is read as the same network, without the tags that tell who mapped it. */
export function publishedRoads({ ways, features }: RoadNetwork): string {
  const line = (id: string, tags: Readonly<Record<string, string>>, geometry: object): object => ({
    type: 'Feature',
    id,
    properties: Object.fromEntries(
      Object.entries(tags).filter(([key, value]) => value !== undefined && !personal.test(key)),
    ),
    geometry,
  });
  return `${JSON.stringify({
    type: 'FeatureCollection',
    features: [
      ...ways.map((way) => line(way.id, way.tags, { type: 'LineString', coordinates: pairs(way.line) })),
      ...features.map((one) => line(one.id, one.tags, geometryOf(one))),
    ],
  })}\n`;
}

function geometryOf({ shape, coordinates }: MapFeature): object {
  const points = pairs(coordinates);
  if (shape === 'point') return { type: 'Point', coordinates: points[0] };
  return shape === 'line' ? { type: 'LineString', coordinates: points } : { type: 'Polygon', coordinates: [points] };
}

function pairs(line: Float64Array): [number, number][] {
  const out: [number, number][] = [];
  for (let i = 0; i + 1 < line.length; i += 2) out.push([line[i]!, line[i + 1]!]);
  return out;
}
