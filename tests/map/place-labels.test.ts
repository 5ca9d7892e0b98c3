import { expect, test } from 'vitest';
import { beyond, boxAbout, middlesAbout, placeLabels } from '../../src/map/place-labels.ts';

const wish = (...middles: [number, number][]) => ({
  width: 40,
  height: 10,
  middles: middles.map(([x, y]) => ({ x, y })),
});

test('a label takes its first place that is free of those before it and of what is taken', () => {
  const placed = placeLabels(
    [wish([0, 0], [0, 50]), wish([39.9, 0], [40, 0]), wish([0, 0], [80, 9.9])],
    [boxAbout({ x: 100, y: 20 }, 10)],
  );
  expect(placed).toEqual([
    { left: -20, top: -5, right: 20, bottom: 5 },
    { left: 20, top: -5, right: 60, bottom: 5 },
    { left: 60, top: 4.9, right: 100, bottom: 14.9 },
  ]);
});

test('a label without room, or with nowhere to stand, is not shown', () => {
  expect(placeLabels([wish(), wish([0, 0])], [boxAbout({ x: 22, y: 0 }, 10)])).toEqual([null, null]);
});

test('beyond a place, a label clears it by its gap in every direction', () => {
  const from = { x: 0, y: 0 };
  expect(beyond(from, { x: 10, y: 0 }, 40, 12, 4)).toEqual({ x: 34, y: 0 });
  expect(beyond(from, { x: 0, y: -10 }, 40, 12, 4)).toEqual({ x: 0, y: -20 });
  expect(beyond(from, from, 40, 12, 4)).toEqual(from);
});

test('a name about an apparatus stands on it, or beyond one of its four sides', () => {
  const outline = [
    { x: 0, y: 0 },
    { x: 80, y: 0 },
    { x: 80, y: 20 },
    { x: 0, y: 20 },
  ];
  expect(middlesAbout(outline, 40, 10)).toEqual([
    { x: 40, y: 10 },
    { x: 104, y: 10 },
    { x: -24, y: 10 },
    { x: 40, y: -9 },
    { x: 40, y: 29 },
  ]);
});
