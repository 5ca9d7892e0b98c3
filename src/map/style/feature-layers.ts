import type { ExpressionSpecification, LayerSpecification } from 'maplibre-gl';
import type { MapInk } from '../ink.ts';
import { lineName } from './line-name.ts';

/** What is mapped beside the roads: water, trails, wires, cliffs. */
export function featureLayers(ink: MapInk): LayerSpecification[] {
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
      // Beside its line, which would strike it through.
      layout: { ...lineName(ink.words, 14), 'text-offset': [0, -0.8] },
      paint: { 'text-color': ink.water, 'text-halo-color': ink.leaf, 'text-halo-width': 2 },
    },
  ];
}
