import type { FeatureCollection } from 'geojson';
import type { Mark } from '../book/index.ts';

/** Marks as GeoJSON for the map: `id`, `kind`, and `words` to stand beside a mark (its name). */
export const markFeatures = (marks: readonly Mark[]): FeatureCollection => ({
  type: 'FeatureCollection',
  features: marks.map(({ id, kind, name, geometry }) => ({
    type: 'Feature',
    properties: { id, kind, words: name ?? '' },
    geometry,
  })),
});
