import type { Feature, FeatureCollection } from 'geojson';
import type {
  ExpressionSpecification,
  LayerSpecification,
  StyleSpecification,
  SymbolLayerSpecification,
} from 'maplibre-gl';
import type { MapDistrict } from './district.ts';
import type { MapInk } from './ink.ts';
import { markFeatures } from './mark-features.ts';

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

function groundLayers(ink: MapInk): LayerSpecification[] {
  const label: ExpressionSpecification = ['to-string', ['get', 'ele']];
  return [
    {
      id: 'hillshade',
      type: 'hillshade',
      source: 'ground',
      paint: {
        'hillshade-illumination-direction': 315,
        'hillshade-shadow-color': ink.night ? '#000000' : '#8d7650',
        'hillshade-highlight-color': ink.night ? '#4a525a' : '#fffdf6',
        'hillshade-accent-color': ink.night ? '#05070a' : '#b9a682',
        'hillshade-exaggeration': [
          'interpolate',
          ['linear'],
          ['zoom'],
          11,
          ink.night ? 0.7 : 0.55,
          15,
          ink.night ? 0.6 : 0.42,
          18,
          ink.night ? 0.45 : 0.3,
        ],
      },
    },
    contourLine('contour', ink.contour, 0, 0.6, 12),
    contourLine('contour-index', ink.contour2, 1, 1.15, 10),
    {
      id: 'contour-label',
      type: 'symbol',
      source: 'contours',
      'source-layer': 'contours',
      minzoom: 13,
      filter: ['==', ['get', 'level'], 1],
      layout: {
        'symbol-placement': 'line',
        'symbol-spacing': 340,
        'text-field': label,
        'text-font': [ink.figures],
        'text-size': 11,
        'text-padding': 12,
        'text-max-angle': 24,
      },
      paint: { 'text-color': ink.contourText, 'text-halo-color': ink.leaf, 'text-halo-width': 1.6 },
    },
    { id: 'outside', type: 'fill', source: 'outside', paint: { 'fill-color': ink.paper, 'fill-antialias': false } },
    {
      id: 'neat-line',
      type: 'line',
      source: 'outside',
      paint: { 'line-color': ink.ink, 'line-width': 0.8 },
    },
  ];
}

const contourLine = (id: string, color: string, level: number, width: number, minzoom: number): LayerSpecification => ({
  id,
  type: 'line',
  source: 'contours',
  'source-layer': 'contours',
  minzoom,
  filter: ['==', ['get', 'level'], level],
  layout: { 'line-join': 'round' },
  paint: { 'line-color': color, 'line-width': width, 'line-opacity': 0.85 },
});

function featureLayers(ink: MapInk): LayerSpecification[] {
  const ofKind = (kind: string, shape: 'Polygon' | 'LineString'): ExpressionSpecification => [
    'all',
    ['==', ['get', 'kind'], kind],
    ['==', ['geometry-type'], shape],
  ];
  const line = (id: string, kind: string, color: string, width: number, dash?: number[]): LayerSpecification => ({
    id,
    type: 'line',
    source: 'features',
    filter: ofKind(kind, 'LineString'),
    layout: { 'line-join': 'round', 'line-cap': 'round' },
    paint: { 'line-color': color, 'line-width': width, ...(dash ? { 'line-dasharray': dash } : {}) },
  });
  return [
    {
      id: 'water-area',
      type: 'fill',
      source: 'features',
      filter: ofKind('water', 'Polygon'),
      paint: { 'fill-color': ink.water, 'fill-opacity': 0.22, 'fill-outline-color': ink.water },
    },
    line('water-line', 'water', ink.water, 1.6),
    line('trail', 'trail', ink.ink2, 1, [3, 2.4]),
    line('wire', 'wire', ink.ink2, 0.7, [8, 3]),
    line('cliff', 'cliff', ink.ink, 1.4),
    line('embankment', 'embankment', ink.ink2, 0.7),
    {
      id: 'feature-name',
      type: 'symbol',
      source: 'features',
      minzoom: 13,
      filter: ['!=', ['get', 'name'], ''],
      layout: lineName(ink.words, 14),
      paint: { 'text-color': ink.water, 'text-halo-color': ink.leaf, 'text-halo-width': 2 },
    },
  ];
}

/** Metres of carriageway drawn where no width is told; the map is not measured from. */
const ROAD_DRAWN_M = 6.5;

function roadLayers(ink: MapInk): LayerSpecification[] {
  // Pixels per metre double with each zoom; under the crossing point the road keeps a width that the eye can follow.
  const width = (extra: number): ExpressionSpecification => [
    'interpolate',
    ['exponential', 2],
    ['zoom'],
    11,
    1.2 + extra,
    14,
    3.2 + extra,
    16,
    (ROAD_DRAWN_M * 2 ** 16) / 56300 + extra,
    21,
    (ROAD_DRAWN_M * 2 ** 21) / 56300 + extra,
  ];
  const line = (id: string, color: string, extra: number): LayerSpecification => ({
    id,
    type: 'line',
    source: 'roads',
    filter: ['!=', ['get', 'tunnel'], true],
    layout: { 'line-join': 'round', 'line-cap': 'butt' },
    paint: { 'line-color': color, 'line-width': width(extra) },
  });
  const road = ink.night ? '#262c31' : '#fffdf7';
  return [
    line('road-edge', ink.ink, 2.2),
    line('road', road, 0),
    {
      id: 'road-tunnel',
      type: 'line',
      source: 'roads',
      filter: ['==', ['get', 'tunnel'], true],
      paint: { 'line-color': ink.ink2, 'line-width': 1.2, 'line-dasharray': [3, 3] },
    },
    {
      id: 'road-centre',
      type: 'line',
      source: 'roads',
      minzoom: 15.5,
      paint: { 'line-color': ink.ink2, 'line-width': 0.6, 'line-dasharray': [16, 12] },
    },
    barrier('barrier', ink.ink, 2),
    barrier('wall', ink.ink, 3),
    {
      id: 'road-name',
      type: 'symbol',
      source: 'roads',
      minzoom: 12,
      filter: ['!=', ['get', 'name'], ''],
      layout: { ...lineName(ink.words, 14.5), 'text-offset': [0, -1.1] },
      paint: { 'text-color': ink.ink, 'text-halo-color': ink.leaf, 'text-halo-width': 2 },
    },
  ];
}

const barrier = (kind: string, color: string, width: number): LayerSpecification => ({
  id: kind,
  type: 'line',
  source: 'features',
  minzoom: 14,
  filter: ['==', ['get', 'kind'], kind],
  paint: { 'line-color': color, 'line-width': width, ...(kind === 'wall' ? { 'line-dasharray': [0.5, 0.5] } : {}) },
});

function markLayers(ink: MapInk): LayerSpecification[] {
  return [
    {
      id: 'mark-area',
      type: 'line',
      source: 'marks',
      minzoom: 14,
      filter: ['!=', ['geometry-type'], 'Point'],
      paint: { 'line-color': ink.ink, 'line-width': 1, 'line-dasharray': [2.2, 1.9] },
    },
    {
      id: 'mark',
      type: 'symbol',
      source: 'marks',
      minzoom: 15,
      filter: ['==', ['geometry-type'], 'Point'],
      layout: {
        'icon-image': ['concat', 'mark-', ['get', 'kind']],
        'icon-size': ['interpolate', ['linear'], ['zoom'], 15, 0.7, 18, 1],
        'icon-allow-overlap': true,
        'text-field': ['step', ['zoom'], '', 16.5, ['get', 'words']],
        'text-font': [ink.figures],
        'text-size': 11,
        'text-anchor': 'left',
        'text-offset': [1.2, 0],
        'text-optional': true,
      },
      paint: { 'text-color': ink.ink, 'text-halo-color': ink.leaf, 'text-halo-width': 2 },
    },
    // Names lie under the rings' layer, which is placed first: a name gives way to a ring.
    {
      id: 'site-name',
      type: 'symbol',
      source: 'sites',
      minzoom: 12.5,
      layout: {
        'text-field': ['get', 'name'],
        'text-font': [ink.words],
        'text-size': 13.5,
        'text-variable-anchor': ['left', 'right', 'top', 'bottom'],
        'text-radial-offset': 0.9,
        'text-justify': 'auto',
      },
      paint: { 'text-color': ink.ink, 'text-halo-color': ink.leaf, 'text-halo-width': 2.2 },
    },
    {
      id: 'site',
      type: 'symbol',
      source: 'sites',
      layout: { 'icon-image': 'site-unread', 'icon-allow-overlap': true },
    },
  ];
}

const lineName = (font: string, size: number): SymbolLayerSpecification['layout'] & object => ({
  'symbol-placement': 'line',
  'symbol-spacing': 420,
  'text-field': ['get', 'name'],
  'text-font': [font],
  'text-size': size,
  'text-letter-spacing': 0.06,
  'text-max-angle': 38,
  'text-padding': 8,
});

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
