import { describe, expect, it } from 'vitest';
import { windowFinder } from '../../src/descent/estimate/steepest-window.ts';
import { angleKnots, governingAngle } from '../../src/descent/index.ts';
import { seededRandom } from '../../src/units/index.ts';

const knots = (lengthM: number) => angleKnots(lengthM, 1, 5)!;
const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180);
const plane = (angleDeg: number, n: number) => Float64Array.from({ length: n }, (_, k) => 500 - tan(angleDeg) * k);

describe('angle knots', () => {
  it('lie a metre or a cell apart, a whole number to a window', () => {
    expect(knots(40)).toEqual({ count: 41, knotM: 1, windowM: 5, lastHalfKnot: 80 });
    expect(angleKnots(40, 0.5, 5)).toEqual({ count: 41, knotM: 1, windowM: 5, lastHalfKnot: 80 });
    expect(angleKnots(40, 2, 6)).toEqual({ count: 21, knotM: 2, windowM: 6, lastHalfKnot: 40 });
    expect(angleKnots(200, 10, 30)).toEqual({ count: 21, knotM: 10, windowM: 30, lastHalfKnot: 40 });
    expect(angleKnots(40, 1.5, 5)!.knotM).toBeCloseTo(5 / 3, 12);
  });

  it('reach the half knot nearest to the end', () => {
    expect(angleKnots(11.9, 1, 5)).toMatchObject({ count: 13, lastHalfKnot: 24 });
    expect(angleKnots(11.4, 1, 5)).toMatchObject({ count: 13, lastHalfKnot: 23 });
    expect(angleKnots(11.2, 1, 5)).toMatchObject({ count: 12, lastHalfKnot: 22 });
  });

  it('do not exist where there is only one window', () => {
    expect(angleKnots(5.7, 1, 5)).toBeNull();
    expect(angleKnots(6, 1, 5)).not.toBeNull();
  });
});

describe('steepest window', () => {
  it('agrees with least squares over every window, on ground that follows a cubic', () => {
    // Half knots by cubic convolution reproduce a quadratic; so does the ground here, pieces joined far from the ends.
    const n = 30;
    const ground = (x: number): number => 0.4 * x + 0.01 * (x - 15) ** 2;
    const fall = Float64Array.from({ length: n }, (_, k) => ground(k));
    let best = -Infinity;
    for (let start = 0; start + 5 <= n - 1; start += 0.5) {
      let xz = 0;
      let xx = 0;
      for (let i = 0; i <= 10; i++) {
        xz += (i / 2 - 2.5) * ground(start + i / 2);
        xx += (i / 2 - 2.5) ** 2;
      }
      best = Math.max(best, xz / xx);
    }
    const found = { slope: 0, halfKnot: 0 };
    windowFinder(knots(n - 1))(fall, found);
    // the last half knot lies on the line between its neighbours, 0.0025 m off the quadratic
    expect(found.slope).toBeCloseTo(best, 3);
    expect(found.halfKnot).toBe(2 * (n - 6));
  });
});

describe('governing angle', () => {
  it('reads planes of any slope', () => {
    for (const angle of [5, 20, 30, 45, 60, 75]) {
      const told = governingAngle(knots(40), plane(angle, 41), 0.05);
      expect(Math.abs(told.medianDeg - angle)).toBeLessThan(0.3);
      expect(told.rangeDeg[0]).toBeLessThan(angle);
      expect(told.rangeDeg[1]).toBeGreaterThan(angle);
    }
  });

  it('finds the steep piece of a slope and where it lies', () => {
    const ground = Float64Array.from(
      { length: 61 },
      (_, k) => -tan(28) * k - (tan(42) - tan(28)) * Math.min(9, Math.max(0, k - 30)),
    );
    const told = governingAngle(knots(60), ground, 0.05);
    expect(Math.abs(told.medianDeg - 42)).toBeLessThan(1);
    expect(told.startM).toBeGreaterThanOrEqual(29);
    expect(told.startM).toBeLessThanOrEqual(35);
  });

  it('gives the same result whatever was estimated before', () => {
    const random = seededRandom(3);
    const heights = plane(33, 51).map((z) => z + 0.05 * random.normal());
    const first = governingAngle(knots(50), heights, 0.05);
    governingAngle(knots(80), plane(50, 81), 0.1);
    governingAngle(knots(50), plane(20, 51), null);
    const again = governingAngle(knots(50), heights, 0.05);
    expect(again.medianDeg).toBe(first.medianDeg);
    expect(again.rangeDeg).toEqual(first.rangeDeg);
    expect(again.startM).toBe(first.startM);
  });

  it('does not depend on the height above sea', () => {
    const random = seededRandom(4);
    const noise = Float64Array.from({ length: 51 }, () => 0.05 * random.normal());
    const at = (base: number) =>
      governingAngle(
        knots(50),
        plane(33, 51).map((z, k) => z + base + noise[k]),
        0.05,
      );
    expect(at(4000).medianDeg).toBeCloseTo(at(0).medianDeg, 6);
  });

  it('plans on no smaller a chance of steepness than it shows', () => {
    const random = seededRandom(5);
    for (let i = 0; i < 10; i++) {
      const told = governingAngle(
        knots(30),
        plane(25 + 3 * i, 31).map((z) => z + 0.1 * random.normal()),
        0.1,
      );
      for (const limit of [30, 35, 45, 50]) {
        expect(told.mostChanceFrom(limit)).toBeGreaterThanOrEqual(told.chanceFrom(limit));
      }
      expect(told.rangeDeg[0]).toBeLessThanOrEqual(told.medianDeg);
      expect(told.rangeDeg[1]).toBeGreaterThanOrEqual(told.medianDeg);
    }
  });

  it('widens its range with the stated error', () => {
    const heights = plane(35, 41);
    const width = (sigma: number): number => {
      const { rangeDeg } = governingAngle(knots(40), heights, sigma);
      return rangeDeg[1] - rangeDeg[0];
    };
    expect(width(0.2)).toBeGreaterThan(1.5 * width(0.05));
  });

  it('calls waves of 0.3 m rough and a plane not', () => {
    const waves = plane(35, 61).map((z, k) => z + 0.42 * Math.sin(k));
    expect(governingAngle(knots(60), waves, 0.05).rough).toBe(true);
    expect(governingAngle(knots(60), plane(35, 61), 0.05).rough).toBe(false);
  });
});
