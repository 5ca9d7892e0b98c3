import type { Feature, FeatureCollection, Position } from 'geojson';
import type { LonLat } from '../geo/index.ts';
import type { LonLatBox } from '../io/index.ts';
import type { RoadNetwork } from '../road/index.ts';

/** The roads as GeoJSON lines for a map: properties `name`, and `bridge`, `tunnel` where the road is one. */
export const roadFeatures = ({ ways }: RoadNetwork): FeatureCollection => ({
  type: 'FeatureCollection',
  features: ways.map(
    ({ name, line, tags }): Feature => ({
      type: 'Feature',
      properties: { name: name ?? '', bridge: isSet(tags.bridge), tunnel: isSet(tags.tunnel) },
      geometry: { type: 'LineString', coordinates: positions(line) },
    }),
  ),
});

/** What is mapped beside the roads, as GeoJSON; properties `kind` and `name`. */
export const mapFeatures = ({ features }: RoadNetwork): FeatureCollection => ({
  type: 'FeatureCollection',
  features: features.map(({ kind, shape, coordinates, tags }): Feature => {
    const points = positions(coordinates);
    return {
      type: 'Feature',
      properties: { kind, name: tags.name ?? '' },
      geometry:
        shape === 'point'
          ? { type: 'Point', coordinates: points[0]! }
          : shape === 'line'
            ? { type: 'LineString', coordinates: points }
            : { type: 'Polygon', coordinates: [points] },
    };
  }),
});

/** Box of the road vertices for which `covers` holds, degrees; null where there is none. */
export function roadsBounds({ ways }: RoadNetwork, covers: (at: LonLat) => boolean): LonLatBox | null {
  let west = Number.POSITIVE_INFINITY;
  let south = Number.POSITIVE_INFINITY;
  let east = Number.NEGATIVE_INFINITY;
  let north = Number.NEGATIVE_INFINITY;
  for (const { line } of ways) {
    for (let i = 0; i + 1 < line.length; i += 2) {
      const lon = line[i]!;
      const lat = line[i + 1]!;
      if (!covers({ lon, lat })) continue;
      west = Math.min(west, lon);
      east = Math.max(east, lon);
      south = Math.min(south, lat);
      north = Math.max(north, lat);
    }
  }
  return west <= east ? { west, south, east, north } : null;
}

const isSet = (tag: string | undefined): boolean => tag !== undefined && tag !== 'no';

function positions(line: Float64Array): Position[] {
  const out: Position[] = [];
  for (let i = 0; i + 1 < line.length; i += 2) out.push([line[i]!, line[i + 1]!]);
  return out;
}
