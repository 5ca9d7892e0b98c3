import { describe, expect, it } from 'vitest';
import { groundToLitter, ropeLine } from '../../src/descent/index.ts';
import { seededRandom } from '../../src/units/index.ts';

const at = (n: number, f: (d: number) => number, step = 0.5) => ({
  distanceM: Float64Array.from({ length: n }, (_, i) => i * step),
  elevationM: Float64Array.from({ length: n }, (_, i) => f(i * step)),
});

/** Upper hull by its definition: a point is a corner unless some pair around it spans at or above it. */
function hullByDefinition(x: Float64Array, z: Float64Array): number[] {
  const corners: number[] = [];
  for (let i = 0; i < x.length; i++) {
    let covered = false;
    for (let a = 0; a < i && !covered; a++) {
      for (let b = i + 1; b < x.length && !covered; b++) {
        covered = z[a] + ((z[b] - z[a]) * (x[i] - x[a])) / (x[b] - x[a]) >= z[i];
      }
    }
    if (!covered) corners.push(i);
  }
  return corners;
}

describe('rope line', () => {
  it('is straight over a hollow, from the ground to 0.8 m at the litter', () => {
    const rope = ropeLine(
      at(41, (d) => 50 - d * 0.5 - 3 * Math.sin((Math.PI * d) / 20)),
      groundToLitter,
    );
    expect([...rope.cornerDistanceM]).toEqual([0, 20]);
    expect(rope.lengthM).toBeCloseTo(Math.hypot(20, 10 - 0.8), 12);
    expect(rope.contacts).toEqual([]);
    expect(rope.wrapRad).toBe(0);
  });

  it('bears on a break of slope with the angle between the pieces', () => {
    const rope = ropeLine(
      at(61, (d) => -Math.min(d, 10) * 0.2 - Math.max(0, d - 10) * 0.8),
      { startM: 0, loadM: 0 },
    );
    expect(rope.contacts).toHaveLength(1);
    expect(rope.contacts[0].distanceM).toBe(10);
    expect(rope.contacts[0].bendDeg).toBeCloseTo(((Math.atan(0.8) - Math.atan(0.2)) * 180) / Math.PI, 9);
  });

  it('follows the arc of a circle: length and wrap as of the arc', () => {
    const radius = 60;
    const profile = at(401, (d) => Math.sqrt(radius * radius - d * d), 0.1);
    const rope = ropeLine(profile, { startM: 0, loadM: 0 });
    const angle = Math.asin(40 / radius);
    expect(rope.cornerDistanceM.length).toBe(401);
    // inscribed polygon: short by about (chord)²/24R² of the length, its wrap by one chord's angle
    expect(rope.lengthM).toBeCloseTo(radius * angle, 4);
    expect(Math.abs(rope.wrapRad - angle)).toBeLessThan(0.004);
  });

  it('agrees with the definition of the hull on random ground', () => {
    const random = seededRandom(5);
    for (let trial = 0; trial < 60; trial++) {
      let z = 0;
      const profile = at(40, () => (z -= random.next()));
      const rope = ropeLine(profile, { startM: 0, loadM: 0 });
      expect([...rope.cornerDistanceM]).toEqual(
        hullByDefinition(profile.distanceM, profile.elevationM).map((i) => i * 0.5),
      );
    }
  });

  it('is never shorter than straight nor longer than the ground', () => {
    const random = seededRandom(6);
    let z = 0;
    const profile = at(120, () => (z -= random.next()));
    const rope = ropeLine(profile, { startM: 0, loadM: 0 });
    let ground = 0;
    for (let i = 1; i < 120; i++) ground += Math.hypot(0.5, profile.elevationM[i] - profile.elevationM[i - 1]);
    const straight = Math.hypot(59.5, profile.elevationM[119] - profile.elevationM[0]);
    expect(rope.lengthM).toBeGreaterThanOrEqual(straight - 1e-9);
    expect(rope.lengthM).toBeLessThanOrEqual(ground + 1e-9);
  });

  it('runs over a barrier at 0.8 m and starts at 0.6 m behind the edge', () => {
    const behind = { distanceM: [-6, -4, -2], elevationM: [0, 0, 0] };
    const rope = ropeLine(
      at(21, (d) => 0 - d * 0.6),
      { startM: 0.6, loadM: 0.8, behind, rises: [{ distanceM: -2, heightM: 0.8 }] },
    );
    expect([...rope.cornerDistanceM]).toEqual([-6, -2, 0, 10]);
    expect([...rope.cornerElevationM]).toEqual([0.6, 0.8, 0, -6 + 0.8]);
  });
});
