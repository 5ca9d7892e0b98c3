import { expect, test } from 'vitest';
import { markKinds, readRecord, recordedMarkKinds } from '../../src/book/index.ts';
import { cuts, siteCut } from '../../src/ui/commands/stencil-cuts.ts';
import { leastCorners, markGeometry, markShape } from '../../src/ui/survey/mark-shape.ts';

const corners = [
  { lon: -128, lat: 44 },
  { lon: -128.0001, lat: 44 },
  { lon: -128.0001, lat: 44.0001 },
];

test('every kind of mark has a cut with a key of its own', () => {
  const tools = cuts.map(({ tool }) => tool);
  for (const kind of markKinds) expect(tools).toContain(kind);
  expect(cuts).toHaveLength(18);
  const keys = [siteCut, ...cuts].map(({ key }) => key);
  expect(new Set(keys).size).toBe(keys.length);
});

test('the geometry of every kind is one that the book takes', () => {
  for (const kind of recordedMarkKinds) {
    const geometry = markGeometry(kind, corners.slice(0, leastCorners[markShape(kind)]));
    const record = { id: 'm1', kind, geometry };
    expect(readRecord('marks', record, 'test')).toMatchObject(record);
  }
});

test('an area is closed, a line is not', () => {
  const area = markGeometry('soft ground', corners);
  expect(area.type === 'Polygon' && area.coordinates[0]).toHaveLength(4);
  expect(area.type === 'Polygon' && area.coordinates[0]![0]).toEqual([-128, 44]);
  expect(area.type === 'Polygon' && area.coordinates[0]![3]).toEqual([-128, 44]);
  const line = markGeometry('barrier', corners);
  expect(line.type === 'LineString' && line.coordinates).toHaveLength(3);
});
