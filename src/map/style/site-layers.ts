import type { ExpressionSpecification, LayerSpecification } from 'maplibre-gl';
import type { MapInk } from '../ink.ts';
import { italic } from './italic.ts';

/** From this zoom a site is a ring with its class; farther out, where rings would hide each other, a dot. */
export const RING_ZOOM = 13;

/**
 * Sites: dots from afar, then rings cut by the ground, then names and figures where there is room for them. `before`: what is placed
 * before the names and after the rings.
 */
export function siteLayers(
  ink: MapInk,
  selected: string | null,
  before: readonly LayerSpecification[] = [],
): LayerSpecification[] {
  const tone: ExpressionSpecification = [
    'match',
    ['get', 'look'],
    'low',
    ink.low,
    'steep',
    ink.steep,
    'high',
    ink.high,
    ink.leaf,
  ];
  // Tone is never alone: the steeper, the larger; undecided and unread are hollow.
  const size: ExpressionSpecification = ['match', ['get', 'look'], 'low', 0.8, 'high', 1.3, 1];
  return [
    {
      id: 'site-dot',
      type: 'circle',
      source: 'sites',
      maxzoom: RING_ZOOM,
      paint: {
        'circle-color': tone,
        'circle-radius': ['interpolate', ['linear'], ['zoom'], 7, ['*', 1.5, size], RING_ZOOM, ['*', 4.5, size]],
        'circle-stroke-color': ink.ink,
        'circle-stroke-width': ['interpolate', ['linear'], ['zoom'], 7, 0.4, RING_ZOOM, 1.2],
      },
    },
    {
      id: 'site-selected',
      type: 'circle',
      source: 'sites',
      filter: ['==', ['get', 'id'], selected ?? ''],
      paint: {
        'circle-color': ink.leaf,
        'circle-opacity': 0.6,
        'circle-radius': 17,
        'circle-stroke-color': ink.accent,
        'circle-stroke-width': 2.2,
      },
    },
    // Names lie under the rings' layer, which is placed first: a name gives way to a ring.
    {
      id: 'site-name',
      type: 'symbol',
      source: 'sites',
      minzoom: 12.2,
      layout: {
        'text-field': [
          'format',
          ['get', 'name'],
          // A site that nobody has checked on the ground has its name in italics.
          {
            'text-font': ['case', ['get', 'unchecked'], ['literal', [italic(ink.words)]], ['literal', [ink.words]]],
          },
          ['case', ['==', ['get', 'figures'], ''], '', ['concat', '\n', ['get', 'figures']]],
          { 'text-font': ['literal', [ink.figures]], 'font-scale': 0.85 },
        ],
        'text-font': [ink.words],
        'text-size': 13.5,
        'text-variable-anchor': [
          'left',
          'right',
          'bottom-left',
          'top-left',
          'bottom-right',
          'top-right',
          'top',
          'bottom',
        ],
        'text-radial-offset': 1.5,
        'text-justify': 'auto',
      },
      paint: { 'text-color': ink.ink, 'text-halo-color': ink.leaf, 'text-halo-width': 2.2 },
    },
    ...before,
    {
      id: 'site',
      type: 'symbol',
      source: 'sites',
      minzoom: RING_ZOOM,
      layout: { 'icon-image': ['concat', 'site-', ['get', 'look']], 'icon-allow-overlap': true },
    },
  ];
}
