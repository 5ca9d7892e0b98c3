import type { FeatureCollection } from 'geojson';
import type { MapSite } from './district.ts';

/** Sites as one GeoJSON source for the map: `id`, `name`, `look`, `figures`, `unchecked`. */
export const siteFeatures = (sites: readonly MapSite[]): FeatureCollection => ({
  type: 'FeatureCollection',
  features: sites.map(({ id, name, lon, lat, look, figures, unchecked }) => ({
    type: 'Feature',
    properties: { id, name, look: look ?? 'unread', figures: figures ?? '', unchecked: unchecked ?? false },
    geometry: { type: 'Point', coordinates: [lon, lat] },
  })),
});
