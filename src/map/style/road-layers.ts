import type { ExpressionSpecification, LayerSpecification } from 'maplibre-gl';
import type { MapInk } from '../ink.ts';
import { ROAD_ROOM } from '../site-rings.ts';
import { lineName } from './line-name.ts';

/** Metres of carriageway drawn where no width is told; the map is not measured from. */
const ROAD_DRAWN_M = 6.5;

/** Roads as paper between ink edges, with barriers and walls. */
export function roadLayers(ink: MapInk): LayerSpecification[] {
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
  ];
}

/**
 * Names of roads, and the room that roads take: what is placed after it keeps off their lines. It stands above all other names, which
 * give way to it.
 */
export const roadNameLayers = (ink: MapInk): LayerSpecification[] => [
  {
    id: 'road-room',
    type: 'symbol',
    source: 'roads',
    minzoom: 12,
    filter: ['!=', ['get', 'tunnel'], true],
    layout: {
      'symbol-placement': 'line',
      'symbol-spacing': 14,
      'icon-image': ROAD_ROOM,
      'icon-allow-overlap': true,
      'icon-padding': 0,
    },
  },
  {
    id: 'road-name',
    type: 'symbol',
    source: 'roads',
    minzoom: 12,
    filter: ['!=', ['get', 'name'], ''],
    layout: { ...lineName(ink.words, 13.5), 'symbol-spacing': 260, 'text-max-angle': 45, 'text-offset': [0, -1.1] },
    paint: { 'text-color': ink.ink, 'text-halo-color': ink.leaf, 'text-halo-width': 2 },
  },
];

const barrier = (kind: string, color: string, width: number): LayerSpecification => ({
  id: kind,
  type: 'line',
  source: 'features',
  minzoom: 14,
  filter: ['==', ['get', 'kind'], kind],
  paint: { 'line-color': color, 'line-width': width, ...(kind === 'wall' ? { 'line-dasharray': [0.5, 0.5] } : {}) },
});
