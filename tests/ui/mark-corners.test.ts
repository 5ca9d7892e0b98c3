import { describe, expect, test } from 'vitest';
import { cornersOf, handlesOf, sameShape, withHandleAt, withoutHandle } from '../../src/ui/survey/mark-corners.ts';
import type { MarkGeometry } from '../../src/ui/survey/mark-shape.ts';

const line: MarkGeometry = {
  type: 'LineString',
  coordinates: [
    [-128, 44],
    [-128.001, 44],
    [-128.001, 44.001],
  ],
};
const hole: [number, number][] = [
  [-128.0004, 44.0001],
  [-128.0005, 44.0001],
  [-128.0005, 44.0002],
  [-128.0004, 44.0001],
];
const area: MarkGeometry = { type: 'Polygon', coordinates: [[...line.coordinates, [-128, 44]], hole] };
const at = { lon: -128.5, lat: 44.5 };

describe('corners of the mark in hand', () => {
  test('a handle at each corner and at the middle of each side: a line is open, an area closes', () => {
    expect(handlesOf('barrier', line).map(({ id }) => id)).toEqual([
      ...['corner 0', 'corner 1', 'corner 2'],
      ...['between 0', 'between 1'],
    ]);
    const round = handlesOf('water', area);
    expect(round).toHaveLength(6);
    expect(round.at(-1)).toMatchObject({ id: 'between 2', at: { lon: -128.0005, lat: 44.0005 } });
    expect(handlesOf('tree', { type: 'Point', coordinates: [-128, 44] })).toHaveLength(1);
  });

  test('a moved corner moves alone, a side drawn out has one corner more', () => {
    expect(withHandleAt(line, 'corner 1', at)).toEqual([cornersOf(line)[0], at, cornersOf(line)[2]]);
    expect(withHandleAt(line, 'between 1', at)).toEqual([...cornersOf(line).slice(0, 2), at, cornersOf(line)[2]]);
    expect(withHandleAt(area, 'between 2', at)).toEqual([...cornersOf(area), at]);
  });

  test('an area stays closed, also where its first corner moves, and keeps its hole', () => {
    const made = sameShape(area, withHandleAt(area, 'corner 0', at));
    expect(made).toEqual({
      type: 'Polygon',
      coordinates: [[[-128.5, 44.5], ...line.coordinates.slice(1), [-128.5, 44.5]], hole],
    });
  });

  test('the last corners of a shape stay', () => {
    expect(withoutHandle(line, 'corner 0')).toHaveLength(2);
    expect(withoutHandle(area, 'corner 0')).toBeNull();
    expect(withoutHandle(line, 'between 0')).toBeNull();
  });

  test('a brought-in shape of very many corners has no handles', () => {
    const coordinates = Array.from({ length: 101 }, (_, i): [number, number] => [-128 + i * 1e-5, 44]);
    expect(handlesOf('wall', { type: 'LineString', coordinates })).toEqual([]);
    expect(handlesOf('wall', { type: 'LineString', coordinates: coordinates.slice(1) })).toHaveLength(199);
  });
});
