import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { localPlane } from '../../src/geo/index.ts';
import { indexRoads, type RoadNetwork, roadAt } from '../../src/road/index.ts';

const plane = localPlane({ lon: 7, lat: 46 });
const line = (points: [number, number][]) =>
  Float64Array.from(
    points.flatMap(([x, y]) => {
      const p = plane.toLonLat({ x, y });
      return [p.lon, p.lat];
    }),
  );
const network: RoadNetwork = {
  ways: [
    {
      id: 'east',
      name: 'Ridge Road',
      line: line([
        [0, 0],
        [100, 0],
      ]),
      tags: { highway: 'tertiary', name: 'Ridge Road' },
    },
    {
      id: 'west',
      name: 'Ridge Road',
      line: line([
        [200, 0],
        [100, 0],
      ]),
      tags: { highway: 'tertiary', name: 'Ridge Road' },
    },
    {
      id: 'north',
      name: null,
      line: line([
        [150, 60],
        [150, 260],
      ]),
      tags: { highway: 'track' },
    },
  ],
  features: [],
};
const index = indexRoads(network);
const at = (x: number, y: number) => roadAt(index, plane.toLonLat({ x, y }));

describe('roadAt', () => {
  it('gives station, side and way', () => {
    const place = at(30, -7);
    if (!place.ok) throw place.error;
    expect(network.ways[place.value.way].id).toBe('east');
    expect(place.value.stationM).toBeCloseTo(30, 3);
    expect(place.value.offsetM).toBeCloseTo(7, 4);
    expect(place.value.route.lengthM).toBeCloseTo(200, 3);
  });

  it('counts stations and sides in the drawing direction of the way under the point', () => {
    const place = at(170, -7);
    if (!place.ok) throw place.error;
    expect(network.ways[place.value.way].id).toBe('west');
    expect(place.value.stationM).toBeCloseTo(30, 3);
    expect(place.value.offsetM).toBeCloseTo(-7, 4);
  });

  it('past the end of a road the end is nearest', () => {
    const place = at(-12, 9);
    if (!place.ok) throw place.error;
    expect(place.value.stationM).toBeCloseTo(0, 3);
    expect(Math.abs(place.value.offsetM)).toBeCloseTo(15, 3);
  });

  it('refuses beyond 50 m and says how far the nearest road is', () => {
    expect(at(50, -49.9).ok).toBe(true);
    const far = at(50, -73.2);
    if (far.ok) throw new Error('too far');
    expect(far.error.code).toBe('no-road');
    expect(far.error.message).toMatch(
      /^No road within 50 m of .*: the nearest is 73 m away; move the point to a roadside\.$/,
    );
    const lost = at(50_000, 0);
    if (lost.ok) throw new Error('lost');
    expect(lost.error.message).toContain('the road file has none within 5 km');
    expect(roadAt(indexRoads({ ways: [], features: [] }), { lon: 7, lat: 46 }).ok).toBe(false);
  });

  it('agrees with a search over all segments', () => {
    const segments = [
      [0, 0, 100, 0],
      [100, 0, 200, 0],
      [150, 60, 150, 260],
    ];
    fc.assert(
      fc.property(
        fc.double({ min: -40, max: 240, noNaN: true }),
        fc.double({ min: -45, max: 300, noNaN: true }),
        (x, y) => {
          const least = Math.min(
            ...segments.map(([ax, ay, bx, by]) => {
              const [dx, dy] = [bx - ax, by - ay];
              const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
              return Math.hypot(ax + t * dx - x, ay + t * dy - y);
            }),
          );
          const place = at(x, y);
          if (Math.abs(least - 50) < 0.01) return;
          expect(place.ok).toBe(least < 50);
          if (place.ok) expect(Math.abs(place.value.offsetM)).toBeCloseTo(least, 3);
        },
      ),
      { seed: 3, numRuns: 200 },
    );
  });
});
