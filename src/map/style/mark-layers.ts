import type { LayerSpecification } from 'maplibre-gl';
import type { MapInk } from '../ink.ts';

/** Marks: areas in a tint with their word, lines solid, points with their symbols. */
export function markLayers(ink: MapInk): LayerSpecification[] {
  return [
    {
      id: 'mark-fill',
      type: 'fill',
      source: 'marks',
      minzoom: 14,
      filter: ['==', ['geometry-type'], 'Polygon'],
      paint: {
        'fill-color': ['match', ['get', 'kind'], 'water', ink.water, 'soft ground', ink.accent, ink.wood],
        'fill-opacity': 0.14,
      },
    },
    {
      id: 'mark-outline',
      type: 'line',
      source: 'marks',
      minzoom: 14,
      filter: ['==', ['geometry-type'], 'Polygon'],
      paint: { 'line-color': ink.ink, 'line-width': 1, 'line-dasharray': [2.2, 1.9] },
    },
    {
      id: 'mark-line',
      type: 'line',
      source: 'marks',
      minzoom: 14,
      filter: ['==', ['geometry-type'], 'LineString'],
      // What somebody saw on site is drawn solid.
      paint: {
        'line-color': ink.ink,
        'line-width': ['match', ['get', 'kind'], 'wall', 3, 'barrier', 2.2, 0.9],
      },
    },
    {
      id: 'mark-word',
      type: 'symbol',
      source: 'marks',
      minzoom: 16.5,
      filter: ['!=', ['geometry-type'], 'Point'],
      layout: {
        'symbol-placement': 'point',
        'text-field': ['case', ['==', ['get', 'words'], ''], ['get', 'kind'], ['get', 'words']],
        'text-font': [ink.figures],
        'text-size': 11,
      },
      paint: { 'text-color': ink.ink, 'text-halo-color': ink.leaf, 'text-halo-width': 2 },
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
  ];
}
