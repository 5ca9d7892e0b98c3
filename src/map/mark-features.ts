import type { FeatureCollection } from 'geojson';
import type { MapMark } from './district.ts';

/** Marks as GeoJSON for the map: `id`, `kind`, and `words` to stand beside a mark (its name). */
export const markFeatures = (marks: readonly MapMark[]): FeatureCollection => ({
  type: 'FeatureCollection',
  features: marks.map(({ id, kind, name, geometry }) => ({
    type: 'Feature',
    properties: { id, kind, words: name ?? '' },
    geometry,
  })),
});
