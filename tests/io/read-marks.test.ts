import { describe, expect, it } from 'vitest';
import { markKinds } from '../../src/book/index.ts';
import { readMarks } from '../../src/io/marks/read-marks.ts';

const mark = (properties: object, geometry: object = { type: 'Point', coordinates: [-128, 44] }) => ({
  type: 'Feature',
  properties,
  geometry,
});
const file = (...features: unknown[]) => JSON.stringify({ type: 'FeatureCollection', features });

describe('readMarks', () => {
  it('reads every kind of the vocabulary', () => {
    const marks = readMarks(file(...markKinds.map((kind) => mark({ kind }))), 'marks.geojson');
    expect(marks.map((m) => m.kind)).toEqual([...markKinds]);
    expect(new Set(marks.map((m) => m.id)).size).toBe(markKinds.length);
  });

  it('keeps id, name, trunk diameter and height', () => {
    const [tree] = readMarks(
      file(mark({ kind: 'tree', id: 'T7', name: 'leaning pine', trunkDiameterM: 0.4, heightM: 18 })),
      'm',
    );
    expect(tree).toMatchObject({ id: 'T7', name: 'leaning pine', trunkDiameterM: 0.4, heightM: 18 });
  });

  it('refuses an unknown kind and names the known ones', () => {
    expect(() => readMarks(file(mark({ kind: 'bush' })), 'm.geojson')).toThrow(
      /^m\.geojson: mark 1 is of kind "bush", which Brinkbook does not know; use one of tree, rock/,
    );
  });

  it.each([
    ['{', /is not JSON/],
    ['[]', /no GeoJSON FeatureCollection/],
    [file(mark({ kind: 'tree' }, { type: 'Point', coordinates: [500000, 4400000] })), /longitude and latitude/],
    [file(mark({ kind: 'tree', trunkDiameterM: -1 })), /trunkDiameterM/],
    [file(mark({})), /kind/],
    [file({ type: 'Feature', geometry: null, properties: { kind: 'tree' } }), /geometry/],
  ])('refuses %s with one sentence', (text, words) => {
    expect(() => readMarks(text, 'm.geojson')).toThrow(words);
  });
});
