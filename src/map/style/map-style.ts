import type { Feature, FeatureCollection } from 'geojson';
import type { StyleSpecification } from 'maplibre-gl';
import type { MapDistrict } from '../district.ts';
import type { MapInk } from '../ink.ts';
import { markFeatures } from '../mark-features.ts';
import { featureLayers } from './feature-layers.ts';
import { groundLayers } from './ground-layers.ts';
import { markLayers } from './mark-layers.ts';
import { roadLayers } from './road-layers.ts';

export interface GroundUrls {
  readonly ground: string;
  readonly contours: string;
}

/** The map's whole style: paper ground in ink and wood tones, from the page's own tokens; no glyphs, no sprite, no network. */
export function mapStyle(district: MapDistrict, urls: GroundUrls, ink: MapInk): StyleSpecification {
  const { west, south, east, north } = district.elevationBounds;
  const bounds: [number, number, number, number] = [west, south, east, north];
  const ground = { tiles: [urls.ground], bounds, tileSize: 256, maxzoom: district.tileMaxZoom } as const;
  return {
    version: 8,
    sources: {
      ground: { type: 'raster-dem', encoding: 'terrarium', ...ground, tiles: [urls.ground] },
      contours: { type: 'vector', tiles: [urls.contours], bounds, maxzoom: district.tileMaxZoom },
      outside: { type: 'geojson', data: outside(bounds) },
      roads: { type: 'geojson', data: district.roads },
      features: { type: 'geojson', data: district.features },
      marks: { type: 'geojson', data: markFeatures(district.marks) },
      sites: { type: 'geojson', data: siteFeatures(district) },
    },
    layers: [
      { id: 'paper', type: 'background', paint: { 'background-color': ink.leaf } },
      ...groundLayers(ink),
      ...featureLayers(ink),
      ...roadLayers(ink),
      ...markLayers(ink),
    ],
  };
}

/** Everything but the elevation's box, so that shading ends at a neat line. */
function outside([west, south, east, north]: [number, number, number, number]): Feature {
  const far = 85;
  return {
    type: 'Feature',
    properties: {},
    geometry: {
      type: 'Polygon',
      coordinates: [
        [
          [-180, -far],
          [180, -far],
          [180, far],
          [-180, far],
          [-180, -far],
        ],
        [
          [west, south],
          [west, north],
          [east, north],
          [east, south],
          [west, south],
        ],
      ],
    },
  };
}

const siteFeatures = ({ sites }: MapDistrict): FeatureCollection => ({
  type: 'FeatureCollection',
  features: sites.map(({ id, name, lon, lat }) => ({
    type: 'Feature',
    properties: { id, name },
    geometry: { type: 'Point', coordinates: [lon, lat] },
  })),
});
