import type { LayerSpecification } from 'maplibre-gl';
import type { MapInk } from '../ink.ts';

/** Marks with their symbols; lines and areas in broken ink. */
export function markLayers(ink: MapInk): LayerSpecification[] {
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
  ];
}
