import type { FeatureCollection } from 'geojson';
import type { MapSite } from './district.ts';

/** Sites as one GeoJSON source for the map: `id`, `name`, `look`, `figures`, `unchecked`, `side` (of its name, empty for any). */
export const siteFeatures = (sites: readonly MapSite[]): FeatureCollection => ({
  type: 'FeatureCollection',
  features: sites.map(({ id, name, lon, lat, look, figures, unchecked, nameSide }) => ({
    type: 'Feature',
    properties: {
      id,
      name,
      look: look ?? 'unread',
      figures: figures ?? '',
      unchecked: unchecked ?? false,
      side: nameSide ?? '',
    },
    geometry: { type: 'Point', coordinates: [lon, lat] },
  })),
});
