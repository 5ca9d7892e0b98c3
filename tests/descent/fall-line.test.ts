import { describe, expect, it } from 'vitest';
import { fallLine, noSurroundings } from '../../src/descent/index.ts';
import { bankHill, formulaHill } from '../helpers/hill.ts';

const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180);
const origin = { x: 0, y: 0 };
const east = { x: 1, y: 0 };
const trace = (hill: Parameters<typeof fallLine>[0], around = noSurroundings) => fallLine(hill, origin, east, around);
const last = (values: Float64Array): number => values[values.length - 1];

describe('fall line', () => {
  it('ends where a plane meets level ground', () => {
    const fall = trace(bankHill(35, 40));
    expect(fall.why).toBe('ground levels');
    // The last metres of the plane still keep the mean of the next 15 m at 10° or the steepest 5 m over 15°.
    const over = (5 * tan(15)) / tan(35);
    expect(last(fall.x)).toBeGreaterThan(40 - over - 0.6);
    expect(last(fall.x)).toBeLessThanOrEqual(40);
    expect(fall.lowBank).toBe(false);
  });

  it('follows the radius of a cone from any azimuth', () => {
    for (const azimuth of [0.1, 1.3, 2.9, 4.4, 5.8]) {
      const u = { x: Math.cos(azimuth), y: Math.sin(azimuth) };
      const cone = formulaHill((x, y) => 200 - tan(30) * Math.min(90, Math.hypot(x, y)));
      const fall = fallLine(cone, { x: 10 * u.x, y: 10 * u.y }, u, noSurroundings);
      for (let i = 0; i < fall.x.length; i++) {
        expect(Math.abs(fall.x[i] * u.y - fall.y[i] * u.x)).toBeLessThan(1e-5);
      }
      expect(Math.hypot(last(fall.x), last(fall.y))).toBeGreaterThan(85);
    }
  });

  it('turns to the slope when it sets out obliquely', () => {
    const plane = formulaHill((x) => -tan(30) * x);
    const s = Math.SQRT1_2;
    const fall = fallLine(plane, origin, { x: s, y: s }, noSurroundings);
    expect(Math.abs(fall.y[100] - fall.y[60])).toBeLessThan(0.05);
  });

  it('stops after 300 m and says so', () => {
    const fall = trace(formulaHill((x) => -tan(20) * x));
    expect(fall.why).toBe('limit');
    expect(last(fall.x)).toBeCloseTo(300, 6);
  });

  it('ends at the last point with data', () => {
    const fall = trace(formulaHill((x) => (x <= 27.2 ? -tan(30) * x : Number.NaN)));
    expect(fall.why).toBe('no data');
    expect(last(fall.x)).toBeCloseTo(27, 6);
  });

  it('has no points where the start has no data', () => {
    expect(trace(formulaHill(() => Number.NaN)).x.length).toBe(0);
  });

  it('goes straight on over a track that climbs along the hill', () => {
    // A 4 m track at 20 m, falling 8 % to the north, on a 32° slope.
    const track = formulaHill((x, y) => {
      const onTrack = Math.min(4, Math.max(0, x - 20));
      return 100 - tan(32) * (x - onTrack) - 0.08 * y - 0.02 * onTrack;
    });
    const fall = trace(track);
    expect(last(fall.x)).toBeGreaterThan(250);
    expect(fall.why).toBe('limit');
  });

  it('goes straight on over a pit on the slope', () => {
    const pit = formulaHill((x, y) => 100 - tan(25) * x - 0.9 * Math.exp(-((x - 30) ** 2 + (y - 0.3) ** 2) / 2));
    const fall = trace(pit);
    expect(last(fall.x)).toBeGreaterThan(290);
  });

  it('turns down a valley instead of up its far side', () => {
    // East side of the valley rises at 30°, its floor falls to the north at 20 %.
    const valley = formulaHill((x, y) => 100 + tan(30) * (Math.abs(x - 30) - 30) - 0.25 * y);
    const fall = trace(valley);
    expect(Math.max(...fall.x)).toBeLessThan(36);
    expect(last(fall.y)).toBeGreaterThan(50);
  });

  it('ends in a closed hollow', () => {
    const bowl = formulaHill((x, y) => tan(30) * Math.hypot(x - 40, y));
    const fall = trace(bowl);
    expect(fall.why).toBe('ground levels');
    expect(last(fall.x)).toBeGreaterThan(36);
    expect(last(fall.x)).toBeLessThan(44);
  });

  it('ends before mapped water', () => {
    const stream = { kind: 'water', line: Float64Array.of(25, -50, 25, 50), halfWidthM: 0.5 } as const;
    const fall = trace(
      formulaHill((x) => -tan(30) * x),
      { ...noSurroundings, bands: [stream] },
    );
    expect(fall.why).toBe('water');
    expect(last(fall.x)).toBeGreaterThan(23.9);
    expect(last(fall.x)).toBeLessThan(24.6);
  });

  it('names a mapped road where it levels on one', () => {
    const road = { kind: 'road', line: Float64Array.of(44, -50, 44, 50), halfWidthM: 4 } as const;
    expect(trace(bankHill(35, 40), { ...noSurroundings, bands: [road] }).why).toBe('road');
    const farRoad = { ...road, line: Float64Array.of(54, -50, 54, 50) };
    expect(trace(bankHill(35, 40), { ...noSurroundings, bands: [farRoad] }).why).toBe('ground levels');
  });

  it('reaches the foot of a bank too low for the rule', () => {
    for (const length of [2, 3, 4, 5, 6]) {
      const fall = trace(bankHill(25, length));
      expect(fall.lowBank).toBe(true);
      expect(Math.abs(last(fall.x) - length)).toBeLessThanOrEqual(0.5);
    }
  });

  it('stays at the edge of flat ground', () => {
    expect(trace(bankHill(0, 10)).x.length).toBe(1);
  });
});
