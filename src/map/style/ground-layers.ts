import type { ExpressionSpecification, LayerSpecification } from 'maplibre-gl';
import type { MapInk } from '../ink.ts';

/**
 * Paper ground: shading, contours with their heights, and the neat line at the end of the elevation; beyond it blank paper,
 * unless a basemap lies below.
 */
export function groundLayers(ink: MapInk, overBasemap: boolean): LayerSpecification[] {
  const label: ExpressionSpecification = ['number-format', ['get', 'ele'], { locale: 'en' }];
  const beyond: LayerSpecification = {
    id: 'outside',
    type: 'fill',
    source: 'outside',
    paint: { 'fill-color': ink.paper, 'fill-antialias': false },
  };
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
        'text-pitch-alignment': 'viewport',
        'text-field': label,
        'text-font': [ink.figures],
        'text-size': 11,
        'text-padding': 12,
        'text-max-angle': 45,
      },
      paint: { 'text-color': ink.contourText, 'text-halo-color': ink.leaf, 'text-halo-width': 1.6 },
    },
    ...(overBasemap ? [] : [beyond]),
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
