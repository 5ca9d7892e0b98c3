import { expect, test } from 'vitest';
import { partsOfStyle } from '../../src/map/basemap/style-parts.ts';

const style = {
  version: 8,
  sprite: 'icons/day',
  glyphs: 'fonts/{fontstack}/{range}.pbf',
  terrain: { source: 'heights' },
  sources: {
    streets: { type: 'vector', url: 'streets.json' },
    photo: { type: 'raster', tiles: ['/photo/{z}/{x}/{y}.jpg', 'https://other.example/{z}/{x}/{y}.jpg'] },
    heights: { type: 'raster-dem', url: 'heights.json' },
  },
  layers: [
    { id: 'ground', type: 'background' },
    { id: 'road', type: 'line', source: 'streets', 'source-layer': 'road' },
    { id: 'shade', type: 'hillshade', source: 'heights' },
    { id: 'lost', type: 'fill', source: 'nowhere' },
  ],
};

test('a foreign style comes in under names of its own, its addresses made whole', () => {
  const parts = partsOfStyle(style, 'https://maps.example/styles/day.json');
  expect(parts.sprite).toBe('https://maps.example/styles/icons/day');
  expect(parts.sources).toEqual({
    'base:streets': { type: 'vector', url: 'https://maps.example/styles/streets.json' },
    'base:photo': {
      type: 'raster',
      tiles: ['https://maps.example/photo/{z}/{x}/{y}.jpg', 'https://other.example/{z}/{x}/{y}.jpg'],
    },
  });
  // Its ground model and whatever draws from it stay out: the map has its own.
  expect(parts.layers.map(({ id }) => id)).toEqual(['base:ground', 'base:road']);
  expect(parts.layers[1]).toMatchObject({ source: 'base:streets', 'source-layer': 'road' });
});

test.each([null, 7, 'text', {}, { version: 7, sources: {}, layers: [] }, { version: 8, sources: {} }])(
  'what is no style is refused in one sentence: %j',
  (what) => {
    expect(() => partsOfStyle(what, 'https://maps.example/x.json')).toThrow(
      'What https://maps.example/x.json holds is no map style; give the address of a MapLibre style (JSON).',
    );
  },
);
