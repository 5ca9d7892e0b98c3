import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { geodesicM, localPlane } from '../../src/geo/index.ts';

const origin = fc.record({
  lon: fc.double({ min: -180, max: 180, noNaN: true }),
  lat: fc.double({ min: -70, max: 70, noNaN: true }),
});
const near = fc.record({
  x: fc.double({ min: -1000, max: 1000, noNaN: true }),
  y: fc.double({ min: -1000, max: 1000, noNaN: true }),
});

describe('localPlane', () => {
  it('comes back to the same point', () => {
    fc.assert(
      fc.property(origin, near, (at, point) => {
        const plane = localPlane(at);
        const back = plane.toLocal(plane.toLonLat(point));
        expect(Math.hypot(back.x - point.x, back.y - point.y)).toBeLessThan(1e-6);
      }),
      { seed: 3 },
    );
  });

  it('keeps lengths within 1 km to 1 mm of the ellipsoid', () => {
    fc.assert(
      fc.property(origin, near, near, (at, a, b) => {
        const plane = localPlane(at);
        const flat = Math.hypot(a.x - b.x, a.y - b.y);
        expect(Math.abs(geodesicM(plane.toLonLat(a), plane.toLonLat(b)) - flat)).toBeLessThan(1e-3);
      }),
      { seed: 4 },
    );
  });

  it('points its axes east and north', () => {
    const plane = localPlane({ lon: -128, lat: 44 });
    expect(plane.toLocal({ lon: -128, lat: 44 })).toEqual({ x: expect.closeTo(0, 6), y: expect.closeTo(0, 6) });
    expect(plane.toLocal({ lon: -127.99, lat: 44 }).x).toBeGreaterThan(800);
    expect(plane.toLocal({ lon: -128, lat: 44.01 }).y).toBeGreaterThan(1110);
  });
});
