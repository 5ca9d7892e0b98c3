import { describe, expect, it } from 'vitest';
import { geodesicM, localPlane } from '../../src/geo/index.ts';
import { joinWays, type RoadWay, routePart, routeThrough } from '../../src/road/index.ts';

/** A way through points in units of 0.001°, near 46° N 7° E. */
const way = (
  id: string,
  points: [number, number][],
  tags: Record<string, string> = { name: 'Ridge Road' },
): RoadWay => ({
  id,
  name: tags.name ?? tags.ref ?? null,
  line: Float64Array.from(points.flatMap(([x, y]) => [7 + x / 1000, 46 + y / 1000])),
  tags: { highway: 'tertiary', ...tags },
});
const names = (ways: RoadWay[], start: number) => {
  const network = { ways, features: [] };
  return routeThrough(network, joinWays(network), start).legs.map(
    (leg) => `${leg.reversed ? '-' : ''}${ways[leg.way].id}`,
  );
};

describe('joining', () => {
  const a = way('a', [
    [0, 0],
    [1, 0],
  ]);
  const b = way('b', [
    [2, 0],
    [1, 0],
  ]);
  const c = way('c', [
    [2, 0],
    [3, 0],
  ]);

  it('joins end to end whatever the drawing, in the direction of the way asked for', () => {
    expect(names([a, b, c], 0)).toEqual(['a', '-b', 'c']);
    expect(names([a, b, c], 2)).toEqual(['a', '-b', 'c']);
    expect(names([a, b, c], 1)).toEqual(['-c', 'b', '-a']);
  });

  it('takes the straightest at a fork and leaves the other apart', () => {
    const fork = way('fork', [
      [1, 0],
      [1.5, 0.8],
    ]);
    const straight = way('on', [
      [1, 0],
      [2, 0.1],
    ]);
    expect(names([a, fork, straight], 0)).toEqual(['a', 'on']);
    expect(names([a, fork, straight], 1)).toEqual(['fork']);
  });

  it('joins on a shared ref where the name changes, and not across another name', () => {
    const p = way(
      'p',
      [
        [0, 0],
        [1, 0],
      ],
      { name: 'East', ref: '7' },
    );
    const q = way(
      'q',
      [
        [1, 0],
        [2, 0],
      ],
      { name: 'West', ref: '7' },
    );
    const r = way(
      'r',
      [
        [2, 0],
        [3, 0],
      ],
      { name: 'Mill' },
    );
    expect(names([p, q, r], 0)).toEqual(['p', 'q']);
  });

  it('joins nameless ways of one class only where nothing else meets', () => {
    const p = way(
      'p',
      [
        [0, 0],
        [1, 0],
      ],
      {},
    );
    const q = way(
      'q',
      [
        [1, 0],
        [2, 0],
      ],
      {},
    );
    const side = way(
      'side',
      [
        [1, 0],
        [1, 1],
      ],
      { name: 'Mill' },
    );
    expect(names([p, q], 0)).toEqual(['p', 'q']);
    expect(names([p, q, side], 0)).toEqual(['p']);
  });

  it('follows the carriageway that runs with the traffic', () => {
    const before = way('before', [
      [0, 0],
      [1, 0],
    ]);
    const out = way(
      'out',
      [
        [1, 0],
        [2, -0.1],
      ],
      { name: 'Ridge Road', oneway: 'yes' },
    );
    const back = way(
      'back',
      [
        [2, 0.05],
        [1, 0],
      ],
      { name: 'Ridge Road', oneway: 'yes' },
    );
    expect(names([before, out, back], 0)).toEqual(['before', 'out']);
    expect(names([before, back, out], 1)).toEqual(['back']);
    expect(
      names(
        [
          way('before', [
            [1, 0],
            [0, 0],
          ]),
          out,
          back,
        ],
        0,
      ),
    ).toEqual(['back', 'before']);
  });

  it('a ring starts at its lowest way, once round', () => {
    const ring = [
      way('x', [
        [0, 0],
        [1, 0],
      ]),
      way('y', [
        [1, 0],
        [1, 1],
      ]),
      way('z', [
        [0, 0],
        [1, 1],
      ]),
    ];
    expect(names(ring, 1)).toEqual(['x', 'y', '-z']);
    expect(names(ring, 0)).toEqual(['x', 'y', '-z']);
  });

  it('a way that closes on itself is a route of its own', () => {
    expect(
      names(
        [
          way('loop', [
            [0, 0],
            [1, 0],
            [1, 1],
            [0, 0],
          ]),
        ],
        0,
      ),
    ).toEqual(['loop']);
  });
});

describe('stations', () => {
  const network = {
    ways: [
      way('a', [
        [0, 0],
        [1, 0],
      ]),
      way('b', [
        [3, 0],
        [1, 0],
      ]),
    ],
    features: [],
  };
  const route = routeThrough(network, joinWays(network), 0);

  it('are geodesic lengths along the joined ways', () => {
    expect(route.lengthM).toBeCloseTo(geodesicM({ lon: 7, lat: 46 }, { lon: 7.001, lat: 46 }) * 3, 4);
    expect([...route.stationM]).toHaveLength(3);
    expect(route.legs[1].fromM).toBe(route.stationM[1]);
  });

  it('a part is cut exactly, whatever plane it is laid on', () => {
    for (const lon of [7, 7.003]) {
      const plane = localPlane({ lon, lat: 46 });
      const part = routePart(route, plane, 10, 200);
      const length = part.x.reduce(
        (sum, x, i) => (i === 0 ? 0 : sum + Math.hypot(x - part.x[i - 1], part.y[i] - part.y[i - 1])),
        0,
      );
      expect([part.stationM[0], part.stationM.at(-1)]).toEqual([10, 200]);
      // A straight line in longitude on a plane off its centre: 2 parts in 10⁸ and the sagitta of the parallel.
      expect(length).toBeCloseTo(190, 4);
    }
  });

  it('a part ends with the route', () => {
    const part = routePart(route, localPlane({ lon: 7, lat: 46 }), -50, 1e6);
    expect(part.stationM[0]).toBe(0);
    expect(part.stationM.at(-1)).toBe(route.lengthM);
  });
});
