import type { ExpressionSpecification, LayerSpecification, SymbolLayerSpecification } from 'maplibre-gl';
import type { MapInk } from '../ink.ts';
import { bold, italic } from './italic.ts';

/** From this zoom a site is a ring with its class; farther out, where rings would hide each other, a dot. */
export const RING_ZOOM = 13;
/** Sites have names from this zoom on, and where there are many from the other: few would find room, and each is looked at in every frame. */
const NAME_ZOOM = 12.2;
const MANY_NAMES_ZOOM = 15;
const MANY = 400;
export const nameZoom = (sites: number): number => (sites > MANY ? MANY_NAMES_ZOOM : NAME_ZOOM);
/**
 * What names and rings keep free around them, pixels. Where there are many, names stand well apart: every one that is drawn is drawn
 * in every frame of a pan.
 */
export const paddings = (sites: number) => (sites > MANY ? { name: 8, ring: 0 } : { name: 2, ring: 2 });
/** Past every zoom of a map: a layer is hidden from its last zoom on. */
export const BEYOND_ZOOM = 24;
/** Size of a name, of the figures under it, and from a site's middle to its name; pixels but for the scale. */
export const NAME_PX = 13.5;
export const FIGURES_SCALE = 0.85;
const OFFSET_EM = 1.5;
export const NAME_OFFSET_PX = OFFSET_EM * NAME_PX;

/** The filters that tell the site that is selected, null for none, from the others, by layer. */
export function selectedFilters(selected: string | null) {
  const is: ExpressionSpecification = ['==', ['get', 'id'], selected ?? ''];
  return { 'site-selected': is, 'site-selected-name': is, 'site-name': ['!', is] as ExpressionSpecification };
}

/**
 * Sites: dots from afar, then rings cut by the ground, then names and figures where there is room for them. `before`: what is placed
 * before the names and after the rings; `count`: of the sites.
 */
export function siteLayers(
  ink: MapInk,
  selected: string | null,
  count: number,
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
  const filters = selectedFilters(selected);
  const names = nameLayer('site-name', ink, italic(ink.words), ink.words);
  const padding = paddings(count);
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
      filter: filters['site-selected'],
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
      ...names,
      minzoom: nameZoom(count),
      filter: filters['site-name'],
      layout: { ...names.layout, 'text-padding': padding.name },
    },
    ...before,
    // The one that is selected has its name whatever else lies there.
    {
      ...nameLayer('site-selected-name', ink, bold(ink.words, true), bold(ink.words), 'always'),
      filter: filters['site-selected-name'],
    },
    {
      id: 'site',
      type: 'symbol',
      source: 'sites',
      minzoom: RING_ZOOM,
      layout: {
        'icon-image': ['concat', 'site-', ['get', 'look']],
        'icon-allow-overlap': true,
        'icon-padding': padding.ring,
      },
    },
  ];
}

/** Names and figures of sites: `unchecked` typeface for a site that nobody has checked on the ground. */
function nameLayer(
  id: string,
  ink: MapInk,
  unchecked: string,
  checked: string,
  overlap: 'never' | 'always' = 'never',
): SymbolLayerSpecification {
  const diagonal = OFFSET_EM / Math.SQRT2;
  const level = [
    ['left', [OFFSET_EM, 0]],
    ['right', [-OFFSET_EM, 0]],
  ];
  const slant = [
    ['bottom-left', [diagonal, -diagonal]],
    ['bottom-right', [-diagonal, -diagonal]],
    ['top-left', [diagonal, diagonal]],
    ['top-right', [-diagonal, diagonal]],
  ];
  // Level with the site that is selected lies the arm of its cross.
  const sides = overlap === 'always' ? [...slant, ...level] : [...level, ...slant];
  const toRight = sides.filter(([anchor]) => /left$/.test(`${anchor}`));
  const toLeft = sides.filter(([anchor]) => /right$/.test(`${anchor}`));
  const anywhere = [...sides, ['top', [0, OFFSET_EM]], ['bottom', [0, -OFFSET_EM]]];
  return {
    id,
    type: 'symbol',
    source: 'sites',
    minzoom: NAME_ZOOM,
    layout: {
      'text-field': [
        'format',
        ['get', 'name'],
        { 'text-font': ['case', ['get', 'unchecked'], ['literal', [unchecked]], ['literal', [checked]]] },
        ['case', ['==', ['get', 'figures'], ''], '', ['concat', '\n', ['get', 'figures']]],
        { 'text-font': ['literal', [ink.figures]], 'font-scale': FIGURES_SCALE },
      ],
      'text-font': [ink.words],
      'text-size': NAME_PX,
      'text-variable-anchor-offset': [
        'match',
        ['get', 'side'],
        'right',
        ['literal', toRight.flat()],
        'left',
        ['literal', toLeft.flat()],
        ['literal', anywhere.flat()],
      ] as unknown as ExpressionSpecification,
      'text-justify': 'auto',
      'text-overlap': overlap,
    },
    paint: { 'text-color': ink.ink, 'text-halo-color': ink.leaf, 'text-halo-width': 2.2 },
  };
}
