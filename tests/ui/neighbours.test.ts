import { expect, test } from 'vitest';
import type { SiteRecord } from '../../src/book/index.ts';
import type { ReadsState } from '../../src/ui/state/index.ts';
import { neighboursOf } from '../../src/ui/survey/neighbours.ts';

const sites = new Map(
  (
    [
      ['a', 0],
      ['b', 1],
      ['c', 2],
      ['d', 3],
      ['twin', 1],
    ] as const
  ).map(([id, east]) => [id, { id, name: id.toUpperCase(), place: { lon: east / 1000, lat: 44 } } as SiteRecord]),
);
const on = (...places: readonly [id: string, road: number, m: number][]): ReadsState['along'] =>
  new Map(places.map(([id, road, m]) => [id, { road, m, mile: null }]));

test('the last before and the first after along the same road, how far and which way', () => {
  const along = on(['a', 7, 900], ['b', 7, 400], ['c', 7, 100], ['d', 7, 0]);
  const { before, after } = neighboursOf('b', sites, along);
  expect(before).toMatchObject({ id: 'c', name: 'C', alongM: 300 });
  expect(after).toMatchObject({ id: 'a', alongM: 500 });
  expect(before!.towardDeg).toBeCloseTo(90, 9);
  expect(after!.towardDeg).toBeCloseTo(-90, 9);
  expect(neighboursOf('a', sites, along).after).toBeNull();
});

test('what lies on another road, or nobody knows where, is no neighbour', () => {
  const along = on(['a', 7, 0], ['b', 7, 400], ['c', 8, 390]);
  expect(neighboursOf('b', sites, along)).toMatchObject({ before: { id: 'a' }, after: null });
  expect(neighboursOf('d', sites, along)).toEqual({ before: null, after: null });
  expect(neighboursOf('gone', sites, along)).toEqual({ before: null, after: null });
});

test('going on from site to site meets each once, two at one place as well', () => {
  const along = on(['a', 7, 0], ['b', 7, 400], ['twin', 7, 400], ['c', 7, 500]);
  const met = ['a'];
  for (let next = neighboursOf('a', sites, along).after; next; next = neighboursOf(next.id, sites, along).after)
    met.push(next.id);
  expect(met).toEqual(['a', 'b', 'twin', 'c']);
  expect(neighboursOf('b', sites, along).after).toMatchObject({ alongM: 0, towardDeg: null });
});
