import type { Feature, FeatureCollection } from 'geojson';
import type { LayerSpecification, StyleSpecification } from 'maplibre-gl';
import type { BasemapParts } from '../basemap/index.ts';
import type { MapDistrict } from '../district.ts';
import type { MapInk } from '../ink.ts';
import { markFeatures } from '../mark-features.ts';
import { siteFeatures } from '../site-features.ts';
import { ROAD_ROOM } from '../site-rings.ts';
import { featureLayers } from './feature-layers.ts';
import { groundLayers } from './ground-layers.ts';
import { markLayers } from './mark-layers.ts';
import { roadLayers, roadNameLayers } from './road-layers.ts';
import { roadsideLayers } from './roadside-layers.ts';
import { siteLayers } from './site-layers.ts';

/** Everything that the style shows. */
export interface MapScene {
  readonly district: MapDistrict;
  readonly ink: MapInk;
  /** Ground as relief, drawn to one scale in height and length. */
  readonly relief: boolean;
  readonly basemap: BasemapParts | null;
  readonly roadside: FeatureCollection;
  /** Points where names of the map leave room for what is drawn over it. */
  readonly labelRoom: FeatureCollection;
  /** Id of the site that is selected, or null. */
  readonly selected: string | null;
}

export interface GroundUrls {
  readonly ground: string;
  readonly contours: string;
}

/**
 * The map's whole style: paper ground in ink and wood tones, from the page's own tokens; no glyphs, and no network but for a
 * basemap that a person switched on.
 */
export function mapStyle(scene: MapScene, urls: GroundUrls): StyleSpecification {
  const { district, ink, relief, basemap, roadside, labelRoom, selected } = scene;
  const { west, south, east, north } = district.elevationBounds;
  const bounds: [number, number, number, number] = [west, south, east, north];
  const ground = { tiles: [urls.ground], bounds, tileSize: 256, maxzoom: district.tileMaxZoom };
  const dem = { type: 'raster-dem', encoding: 'terrarium', ...ground } as const;
  return {
    version: 8,
    ...(basemap?.sprite ? { sprite: basemap.sprite } : {}),
    sources: {
      ...basemap?.sources,
      ground: dem,
      // Relief takes its tiles at another size than shading does: one source for both would blur one of them.
      relief: dem,
      contours: { type: 'vector', tiles: [urls.contours], bounds, maxzoom: district.tileMaxZoom },
      outside: { type: 'geojson', data: outside(bounds) },
      roads: { type: 'geojson', data: district.roads },
      features: { type: 'geojson', data: district.features },
      roadside: { type: 'geojson', data: roadside },
      marks: { type: 'geojson', data: markFeatures(district.marks) },
      sites: { type: 'geojson', data: siteFeatures(district.sites) },
      'label-room': { type: 'geojson', data: labelRoom },
    },
    ...(relief ? { terrain: { source: 'relief', exaggeration: 1 } } : {}),
    layers: [
      { id: 'paper', type: 'background', paint: { 'background-color': ink.leaf } },
      ...(basemap?.layers ?? []),
      ...groundLayers(ink, basemap !== null),
      ...featureLayers(ink),
      ...roadLayers(ink),
      ...roadsideLayers(ink),
      ...markLayers(ink),
      ...siteLayers(ink, selected, district.sites.length, roadNameLayers(ink)),
      labelRoomLayer,
    ],
  };
}

/** Placed before every name, so that names keep off it; it shows nothing. */
const labelRoomLayer: LayerSpecification = {
  id: 'label-room',
  type: 'symbol',
  source: 'label-room',
  layout: { 'icon-image': ROAD_ROOM, 'icon-size': 2, 'icon-allow-overlap': true, 'icon-padding': 0 },
};

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
