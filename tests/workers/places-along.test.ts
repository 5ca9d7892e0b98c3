import { expect, test } from 'vitest';
import { indexRoads } from '../../src/road/index.ts';
import { placesAlong } from '../../src/workers/places-along.ts';

const LAT = 44;
/** A way along a parallel through longitudes in thousandths of a degree. */
const way = (id: string, name: string, ...lons: readonly number[]) => ({
  id,
  name,
  line: Float64Array.from(lons.flatMap((lon) => [lon / 1000, LAT])),
  tags: { highway: 'tertiary', name },
});

test('ways of one road that are drawn against one another tell one distance; a namesake apart is another road', () => {
  const roads = indexRoads({
    ways: [way('1', 'Upper Road', 0, 5), way('2', 'Upper Road', 10, 5), way('3', 'Upper Road', 100, 110)],
    features: [],
  });
  const ask = [1, 4, 6, 9, 105, 50].map((lon) => ({ lon: lon / 1000, lat: LAT }));
  const [a, b, c, d, apart, none] = placesAlong(roads, { positions: ask, posts: [] });
  expect([a, b, c, d].map((place) => place!.road)).toEqual([0, 0, 0, 0]);
  expect(apart!.road).toBe(2);
  expect(none).toBeNull();
  // A thousandth of a degree here is as long as any other: a at 1, b at 4, c at 6, d at 9.
  const unit = (b!.m - a!.m) / 3;
  expect(unit).toBeGreaterThan(79);
  expect((c!.m - b!.m) / unit).toBeCloseTo(2, 3);
  expect((d!.m - c!.m) / unit).toBeCloseTo(3, 3);
});
