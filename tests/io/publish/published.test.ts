import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readRoads } from '../../../src/io/index.ts';
import { packJson } from '../../../src/io/offline/index.ts';
import {
  fileStems,
  publishedRoads,
  rasterStems,
  readPublication,
  readPublishedStudy,
} from '../../../src/io/publish/index.ts';

test('stems are plain, never the same, and the id itself where that is plain', () => {
  expect(fileStems(['kettle-bend', 'Kettle-Bend', 'con', 'a.b', 'site-1', '-x', 'all-sheets', 'x'.repeat(64)])).toEqual(
    {
      ...{ 'kettle-bend': 'kettle-bend', 'Kettle-Bend': 'site-2', con: 'site-3', 'a.b': 'site-4', 'site-1': 'site-1' },
      ...{ '-x': 'site-5', 'all-sheets': 'site-6', [`${'x'.repeat(64)}`]: 'x'.repeat(64) },
    },
  );
  const id = fc.stringMatching(/^[A-Za-z0-9][A-Za-z0-9._-]{0,20}$/);
  fc.assert(
    fc.property(fc.uniqueArray(id), (ids) => {
      const stems = fileStems(ids);
      expect(new Set(ids.map((one) => stems[one]!.toLowerCase())).size).toBe(ids.length);
      for (const one of ids) expect(stems[one]).toMatch(/^[a-z0-9][a-z0-9-]*$/);
    }),
  );
});

test('an id that is the name of something in every object has a stem of its own', () => {
  const stems = fileStems(['constructor', 'toString']);
  expect([stems.constructor, stems.toString]).toEqual(['constructor', 'site-1']);
});

test('stems of rasters lose folders, endings, queries and everything that is no letter or digit', () => {
  expect(
    rasterStems([
      '/home/me/DEM 1m.TIF',
      'C:\\data\\dem-1m.tiff',
      'https://h.example/a/dem.tif?key=1#x',
      '../..',
      'con.tif',
    ]),
  ).toEqual(['dem-1m', 'dem-1m-2', 'dem', 'ground', 'ground-2']);
});

test('published roads are read as the same network, without who mapped them', () => {
  const line = {
    type: 'LineString',
    coordinates: [
      [-128, 44],
      [-128.001, 44.001],
    ],
  };
  const area = {
    type: 'Polygon',
    coordinates: [
      [
        [-128, 44],
        [-128.001, 44],
        [-128, 44.001],
        [-128, 44],
      ],
    ],
  };
  const features = [
    {
      type: 'Feature',
      id: 'way/1',
      properties: { highway: 'secondary', name: 'A Road', lanes: 2, user: 'SECRET', '@uid': 7 },
      geometry: line,
    },
    { type: 'Feature', id: 'way/2', properties: { natural: 'water', note: 'SECRET' }, geometry: area },
    {
      type: 'Feature',
      id: 'node/3',
      properties: { power: 'pole' },
      geometry: { type: 'Point', coordinates: [-128, 44] },
    },
  ];
  const from = readRoads(JSON.stringify({ type: 'FeatureCollection', features }), 'a');
  const text = publishedRoads(from);
  expect(text).not.toMatch(/SECRET|uid/);
  const to = readRoads(text, 'b');
  const bare = ({ tags: _tags, ...rest }: { tags: unknown }): object => rest;
  expect(to.ways.map(bare)).toEqual(from.ways.map(bare));
  expect(to.features.map(bare)).toEqual(from.features.map(bare));
  expect(to.ways[0]!.tags).toEqual({ highway: 'secondary', name: 'A Road', lanes: '2' });
  // Roads without any tag, as a district maps them itself, stay roads.
  const own = readRoads(
    JSON.stringify({ type: 'FeatureCollection', features: [{ type: 'Feature', properties: {}, geometry: line }] }),
    'c',
  );
  expect(readRoads(publishedRoads(own), 'd')).toEqual(own);
});

test('a list of another kind is refused with one sentence', () => {
  for (const text of ['', 'null', '[]', '{"schema":"brinkbook/publication@2","pack":{"schema":"brinkbook/call@1"}}'])
    expect(() => readPublication(text, 'This folder')).toThrow('This folder is no list of a published folder');
});

test('a study is read packed or unpacked; anything else is refused with one sentence', async () => {
  const study = { sentence: 'Plan as steep.' };
  const bytes = (text: string): ArrayBuffer => new TextEncoder().encode(text).buffer as ArrayBuffer;
  expect(await readPublishedStudy(await packJson(study))).toEqual(study);
  expect(await readPublishedStudy(bytes(JSON.stringify(study)))).toEqual(study);
  const cut = (await packJson(study)).slice(0, 20);
  for (const wrong of [bytes(''), bytes('<html>'), bytes('null'), bytes('{}'), cut])
    await expect(readPublishedStudy(wrong)).rejects.toThrow('publish the book again');
});
