import { describe, expect, it } from 'vitest';
import { alongRoads, roadsAround, upSlope } from '../../src/access/index.ts';
import { indexRoads, type RoadIndex, roadAt } from '../../src/road/index.ts';
import { groundFrom } from '../helpers/ground-from.ts';

/** South-facing slope of 30° with benches 8 m wide at the given y, the road's height flat along each. */
const TAN = Math.tan(Math.PI / 6);
const BENCHES = [0, -90];
function height(_x: number, y: number): number {
  let z = 1000;
  let at = 200;
  for (const bench of BENCHES) {
    if (y >= bench + 4) return z - (at - y) * TAN;
    z -= (at - (bench + 4)) * TAN;
    if (y >= bench - 4) return z;
    at = bench - 4;
  }
  return z - (at - y) * TAN;
}
const ground = groundFrom(height, { west: -300, south: -400, east: 300, north: 250 });
const { plane } = ground;

const lineOf = (points: readonly (readonly [number, number])[]): Float64Array =>
  Float64Array.from(points.flatMap(([x, y]) => Object.values(plane.toLonLat({ x, y }))));
const straight = (y: number): (readonly [number, number])[] =>
  Array.from({ length: 21 }, (_, i) => [-250 + 25 * i, y] as const);

const roads: RoadIndex = indexRoads({
  ways: [
    { id: 'way/1', name: 'Upper Road', line: lineOf(straight(0)), tags: { highway: 'tertiary' } },
    // Drawn from east to west.
    { id: 'way/2', name: 'Lower Road', line: lineOf(straight(-90).reverse()), tags: { highway: 'tertiary' } },
  ],
  features: [],
});
const at = (x: number, y: number) => plane.toLonLat({ x, y });

describe('roads around a place on a slope', () => {
  it('offers the road up the slope although the lower one is nearer in plan', () => {
    // 66 m below the upper edge, 20 m above the lower road's line.
    const found = roadsAround(ground, roads, at(10, -70), 8);
    expect(found.where).toBe('slope');
    expect(found.above.map(({ roadName }) => roadName)).toEqual(['Upper Road']);
    expect(found.below.map(({ roadName }) => roadName)).toEqual(['Lower Road']);
    const [edge] = found.above;
    // By the slope: 66 m of plan at 30°, the circle of 8 m in radius up and down the slope.
    const drop = 66 * TAN;
    expect(edge!.dropM[0]).toBeGreaterThan(drop - 8 * TAN - 0.3);
    expect(edge!.dropM[0]).toBeLessThan(drop - 8 * TAN * 0.9);
    expect(edge!.dropM[1]).toBeLessThan(drop + 8 * TAN + 0.3);
    expect(edge!.distanceM).toBeGreaterThan(65);
    expect(edge!.distanceM).toBeLessThan(67.5);
    expect(edge).toMatchObject({ side: 'right', traced: true, riseBetween: false, drops: true });
    expect(edge!.sideAzimuthDeg).toBeCloseTo(180, 0);
  });

  it('tells the side as the way is drawn', () => {
    const [lower] = roadsAround(ground, roads, at(0, -130), 0).above;
    // Drawn westward, south of it lies on the left.
    expect(lower).toMatchObject({ roadName: 'Lower Road', side: 'left' });
    const place = roadAt(roads, at(0, -90));
    expect(place.ok && Math.abs(place.value.stationM - lower!.stationM)).toBeLessThan(1.5);
  });

  it('below both roads both edges are offered, the one met first standing first', () => {
    const found = roadsAround(ground, roads, at(0, -130), 10);
    expect(found.above.map(({ roadName }) => roadName)).toEqual(['Lower Road', 'Upper Road']);
    expect(found.below).toEqual([]);
  });

  it('a place on a road is beside it, and the slope above is still told', () => {
    const found = roadsAround(ground, roads, at(0, -92), 3);
    expect(found.where).toBe('beside');
    expect(found.beside.map(({ roadName }) => roadName)).toEqual(['Lower Road']);
    expect(found.above.map(({ roadName }) => roadName)).toEqual(['Upper Road']);
  });

  it('a rise between is told, and puts the road behind', () => {
    const ridge = groundFrom((x, y) => height(x, y) + (y > -60 && y < -30 ? 40 : 0), {
      west: -300,
      south: -400,
      east: 300,
      north: 250,
    });
    const found = roadsAround(ridge, roads, at(0, -130), 0);
    expect(found.above.map(({ roadName, riseBetween }) => [roadName, riseBetween])).toEqual([
      ['Lower Road', false],
      ['Upper Road', true],
    ]);
  });

  it('without ground nothing is invented', () => {
    const found = roadsAround(ground, roads, at(0, -600), 5);
    expect([found.heightM, found.above, found.below]).toEqual([null, [], []]);
  });
});

describe('the way up', () => {
  it('goes straight up a plane and over a bench', () => {
    const way = upSlope(ground, { x: 5, y: -70 }, 120);
    expect(way.y.at(-1)! - way.y[0]!).toBeGreaterThan(115);
    expect(Math.max(...way.x) - Math.min(...way.x)).toBeLessThan(1);
  });
});

describe('distance along the roads', () => {
  it('is not the distance by air: the other leg of a hairpin is far', () => {
    const hairpin = indexRoads({
      ways: [
        {
          id: 'a',
          name: 'R',
          line: lineOf([
            [0, 0],
            [200, 0],
            [210, -20],
          ]),
          tags: {},
        },
        {
          id: 'b',
          name: 'R',
          line: lineOf([
            [0, -40],
            [200, -40],
            [210, -20],
          ]),
          tags: {},
        },
        {
          id: 'c',
          name: 'Island',
          line: lineOf([
            [0, 100],
            [50, 100],
          ]),
          tags: {},
        },
      ],
      features: [],
    });
    const on = (x: number, y: number) => {
      const place = roadAt(hairpin, at(x, y));
      if (!place.ok) throw place.error;
      return { way: place.value.way, stationM: place.value.stationM };
    };
    const [here, otherLeg, island] = alongRoads(hairpin, on(50, 0), [on(100, 0), on(50, -40), on(20, 100)]);
    expect(here).toBeCloseTo(50, 2);
    // 150 m out, two sides of the bend of √(10² + 20²) each, 150 m back.
    expect(otherLeg).toBeCloseTo(300 + 2 * Math.hypot(10, 20), 2);
    expect(island).toBeNull();
  });
});
