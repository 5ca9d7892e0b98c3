import { validateStyleMin } from '@maplibre/maplibre-gl-style-spec';
import { expect, test } from 'vitest';
import { markKinds } from '../../src/book/index.ts';
import { partsOfStyle } from '../../src/map/basemap/style-parts.ts';
import { roundLength } from '../../src/map/furniture.ts';
import type { MapInk } from '../../src/map/ink.ts';
import { type MapScene, mapStyle } from '../../src/map/style/map-style.ts';
import { markPaths } from '../../src/plan/index.ts';

const nothing = { type: 'FeatureCollection', features: [] } as const;
const district = {
  elevationBounds: { west: -128.1, south: 43.9, east: -127.9, north: 44.1 },
  tileMaxZoom: 16,
  roadsBounds: null,
  roads: { ...nothing, features: [] },
  features: { ...nothing, features: [] },
  marks: [],
  sites: [],
  attribution: '',
};
const ink = {
  night: false,
  paper: '#f7f3e9',
  leaf: '#fbf8f1',
  ink: '#1d2a35',
  ink2: '#4a5560',
  rule: '#c9c0ad',
  accent: '#b4451f',
  water: '#3b6f8f',
  wood: '#4f6b3a',
  contour: '#a98f6c',
  contour2: '#8a6d47',
  contourText: '#5f4522',
  low: '#efe2c4',
  steep: '#bd8c55',
  high: '#3d2219',
  words: 'serif',
  figures: 'sans-serif',
};
const sceneIn = (inInk: MapInk): MapScene => ({
  district,
  ink: inInk,
  relief: false,
  basemap: null,
  roadside: { ...nothing, features: [] },
  labelRoom: { ...nothing, features: [] },
  selected: null,
});
const urls = { ground: 'ground1://ground/1/-/{z}/{x}/{y}', contours: 'ground1://contours/1/us/{z}/{x}/{y}' };

test.each([false, true])('the style is valid by the style specification, night %s', (night) => {
  const style = mapStyle(sceneIn({ ...ink, night }), urls);
  const errors = validateStyleMin(style).map(({ message }) => message);
  // Text without glyphs is drawn by the browser: the map library takes that, the specification's checker does not know it.
  expect(errors.filter((message) => !/use of "text-field" requires a style "glyphs" property/.test(message))).toEqual(
    [],
  );
});

test('the style names no host: no glyphs, no sprite, every address is the worker’s', () => {
  const style = mapStyle(sceneIn(ink), urls);
  expect(style.glyphs).toBeUndefined();
  expect(style.sprite).toBeUndefined();
  expect(JSON.stringify(style)).not.toMatch(/https?:/);
});

test('over a basemap nothing is blanked out; relief has a source of its own and true height', () => {
  const parts = partsOfStyle(
    {
      version: 8,
      sources: { tiles: { type: 'raster', tiles: ['/{z}/{x}/{y}.png'] } },
      layers: [{ id: 'paper', type: 'raster', source: 'tiles' }],
    },
    'https://maps.example/style.json',
  );
  const style = mapStyle({ ...sceneIn(ink), relief: true, basemap: parts }, urls);
  const ids = style.layers.map(({ id }) => id);
  expect(ids).not.toContain('outside');
  // It lies over the paper and under everything of the own.
  expect(ids.slice(0, 3)).toEqual(['paper', 'base:paper', 'hillshade']);
  expect(style.terrain).toEqual({ source: 'relief', exaggeration: 1 });
  expect(style.layers.some((layer) => 'source' in layer && layer.source === 'relief')).toBe(false);
  const errors = validateStyleMin(style).map(({ message }) => message);
  expect(errors.filter((message) => !/"glyphs" property/.test(message))).toEqual([]);
});

test('every kind of mark has its symbol', () => {
  expect(Object.keys(markPaths).sort()).toEqual([...markKinds].sort());
});

test('a scale bar’s length is the roundest that fits', () => {
  expect([149, 150, 200, 499, 500, 999, 1000, 0.7].map(roundLength)).toEqual([100, 100, 200, 200, 500, 500, 1000, 0.5]);
});

test('thousands of sites have their names from nearer on than a few and farther apart, rings and dots as soon', () => {
  const layersOf = (count: number) => {
    const sites = Array.from({ length: count }, (_, i) => ({ id: `${i}`, name: `Site ${i}`, lon: -128, lat: 44 }));
    const { layers } = mapStyle({ ...sceneIn(ink), district: { ...district, sites } }, urls);
    return new Map(layers.map((layer) => [layer.id, layer]));
  };
  const [few, many] = [layersOf(20), layersOf(5000)];
  const [fewNames, manyNames] = [few.get('site-name'), many.get('site-name')];
  expect(manyNames!.minzoom!).toBeGreaterThan(fewNames!.minzoom!);
  if (fewNames?.type !== 'symbol' || manyNames?.type !== 'symbol') throw new Error('Names are no symbols.');
  expect(manyNames.layout!['text-padding']).toBeGreaterThan(fewNames.layout!['text-padding'] as number);
  for (const layer of ['site-dot', 'site', 'site-selected-name']) {
    expect(many.get(layer)!.minzoom).toBe(few.get(layer)!.minzoom);
  }
});
