import { describe, expect, it } from 'vitest';
import {
  groundBehind,
  groundLength,
  lineBetween,
  lipAngle,
  meanAngle,
  nearbyMaxAngle,
  profileAlong,
  sightLost,
  smoothedGroundLength,
  windowFor,
} from '../../src/descent/index.ts';
import { bankHill, formulaHill } from '../helpers/hill.ts';

const line = (lengthM: number) => lineBetween({ x: 0, y: 0 }, { x: lengthM, y: 0 }, 'ground levels')!;
const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180);

describe('profile', () => {
  it('reads a plane of any slope exactly, in every window', () => {
    for (const angle of [5, 18, 30, 45, 60, 80]) {
      const profile = profileAlong(bankHill(angle, 100), line(37.3));
      for (const a of profile.angleDeg) expect(a).toBeCloseTo(angle, 9);
    }
  });

  it('has a point every half metre from the edge on, and one at the end', () => {
    const { distanceM } = profileAlong(bankHill(30, 100), line(10.3));
    expect(distanceM[0]).toBe(0);
    expect(distanceM[19]).toBeCloseTo(9.5, 12);
    expect(distanceM[distanceM.length - 1]).toBeCloseTo(10.3, 12);
  });

  it('keeps windows wholly between edge and end', () => {
    // 45° for the first 5 m, then 20°: the first window alone reads 45°, and nothing of the level bench.
    const hill = formulaHill((x) => (x < 0 ? 0 : -Math.min(x, 5) - tan(20) * Math.max(0, x - 5)));
    const { angleDeg, distanceM } = profileAlong(hill, line(30));
    for (let i = 0; i < distanceM.length; i++) {
      if (distanceM[i] <= 2.5) expect(angleDeg[i]).toBeCloseTo(45, 9);
      if (distanceM[i] >= 7.5) expect(angleDeg[i]).toBeCloseTo(20, 9);
    }
  });

  it('takes 5 m or three cells, or all of a shorter descent', () => {
    expect(windowFor(50, 1)).toBe(5);
    expect(windowFor(50, 2)).toBe(6);
    expect(windowFor(50, 10)).toBe(30);
    expect(windowFor(3.5, 1)).toBe(3.5);
  });

  it('measures along the ground', () => {
    const profile = profileAlong(bankHill(35, 100), line(40.3));
    expect(groundLength(profile)).toBeCloseTo(40.3 / Math.cos((35 * Math.PI) / 180), 9);
    expect(smoothedGroundLength(profile)).toBeCloseTo(40.3 / Math.cos((35 * Math.PI) / 180), 1);
  });

  it('tells the ground behind the edge, nearest first, up to missing data', () => {
    const hill = formulaHill((x) => (x < -3.2 ? Number.NaN : -0.02 * x));
    const behind = groundBehind(hill, line(20), 8);
    expect([...behind.distanceM]).toEqual([-0.5, -1, -1.5, -2, -2.5, -3]);
    expect(behind.elevationM[5]).toBeCloseTo(0.06, 12);
  });

  it('tells the change of slope at the edge', () => {
    const hill = formulaHill((x) => (x < 0 ? -x * tan(-4) : -x * tan(38)));
    const l = line(30);
    expect(lipAngle(profileAlong(hill, l), groundBehind(hill, l, 8))).toBeCloseTo(38 + 4, 9);
    const toward = formulaHill((x) => (x < 0 ? -x * tan(3) : -x * tan(38)));
    expect(lipAngle(profileAlong(toward, l), groundBehind(toward, l, 8))).toBeCloseTo(38 - 3, 9);
  });

  it('gives the mean angle as drop over horizontal length', () => {
    expect(meanAngle(10, 10)).toBeCloseTo(45, 12);
    expect(meanAngle(0, 10)).toBe(0);
  });
});

describe('nearby angle', () => {
  it('finds the steepest parallel within 3 m', () => {
    const plane = bankHill(30, 100);
    expect(nearbyMaxAngle(plane, line(40), { x: 0, y: 1 })).toBeCloseTo(30, 9);
    // the slope steepens to the north, 1° a metre
    const fan = formulaHill((x, y) => -Math.max(0, x) * tan(30 + y));
    expect(nearbyMaxAngle(fan, line(40), { x: 0, y: 1 })).toBeCloseTo(33, 9);
  });

  it('leaves out parallels without data', () => {
    const half = formulaHill((x, y) => (y > 0.5 ? Number.NaN : -Math.max(0, x) * tan(30 - y)));
    expect(nearbyMaxAngle(half, line(40), { x: 0, y: 1 })).toBeCloseTo(33, 9);
  });
});

describe('sight', () => {
  it('reaches the end of a plane', () => {
    expect(sightLost(profileAlong(bankHill(40, 100), line(60)))).toBeNull();
  });

  it('is lost below a convex break where the sight line over it passes the load', () => {
    // 10° for 20 m, then 45°: eye 1.7 m over the edge, past the break the line falls (1.7 + 20·tan 10°)/20 a metre.
    const hill = formulaHill((x) => -tan(10) * Math.min(20, Math.max(0, x)) - Math.max(0, x - 20));
    const sight = (1.7 + 20 * tan(10)) / 20;
    // load 1 m up: −20·tan10° − t + 1 = 1.7 − sight·(20 + t) − … solved for t
    const t = 1 / (1 - sight);
    const lost = sightLost(profileAlong(hill, line(60)))!;
    expect(lost).toBeGreaterThanOrEqual(20 + t);
    expect(lost).toBeLessThanOrEqual(20 + t + 0.5);
  });
});
