import type { ExpressionSpecification, LayerSpecification } from 'maplibre-gl';
import type { MapInk } from '../ink.ts';

/** Width of the band on the screen by zoom, pixels; it lies outside the edge, so it is moved by half of that. */
const widths: readonly [number, number][] = [
  [12, 3],
  [14, 6],
  [16, 11],
  [18, 20],
];
const byZoom = (of: (width: number) => number): ExpressionSpecification =>
  ['interpolate', ['linear'], ['zoom'], ...widths.flatMap(([zoom, width]) => [zoom, of(width)])] as never;
const is = (what: string, ...more: ExpressionSpecification[]): ExpressionSpecification => [
  'all',
  ['==', ['get', 'what'], what],
  ...more,
];

/** Bench edges, and along every drop the class as a band of its own tone and pattern with its word beside it. */
export function roadsideLayers(ink: MapInk): LayerSpecification[] {
  const edge = (id: string, kinds: string[], width: number, dash?: number[]): LayerSpecification => ({
    id,
    type: 'line',
    source: 'roadside',
    minzoom: 14.5,
    filter: is('edge', ['in', ['get', 'kind'], ['literal', kinds]]),
    layout: { 'line-join': 'round' },
    paint: { 'line-color': ink.ink, 'line-width': width, ...(dash ? { 'line-dasharray': dash } : {}) },
  });
  return [
    {
      id: 'roadside-band',
      type: 'line',
      source: 'roadside',
      minzoom: 12,
      filter: is('band'),
      layout: { 'line-join': 'round' },
      paint: {
        'line-pattern': ['concat', 'roadside-', ['get', 'look']],
        'line-width': byZoom((width) => width),
        'line-offset': byZoom((width) => width / 2),
      },
    },
    edge('edge-drop', ['drop'], 1.5),
    edge('edge-bank', ['bank', 'rise'], 0.8, [4, 2]),
    edge('edge-level', ['none'], 0.8, [1, 3]),
    {
      id: 'roadside-word',
      type: 'symbol',
      source: 'roadside',
      minzoom: 15.2,
      filter: is('word'),
      layout: {
        'text-field': ['get', 'words'],
        'text-font': [ink.figures],
        'text-size': 11,
        'text-anchor': ['get', 'anchor'] as never,
        'text-offset': [
          'match',
          ['get', 'anchor'],
          'left',
          ['literal', [1.6, 0]],
          'right',
          ['literal', [-1.6, 0]],
          'top',
          ['literal', [0, 1.5]],
          ['literal', [0, -1.5]],
        ],
        'text-padding': 14,
      },
      paint: { 'text-color': ink.ink, 'text-halo-color': ink.leaf, 'text-halo-width': 2 },
    },
  ];
}
