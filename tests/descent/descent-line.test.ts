import { describe, expect, it } from 'vitest';
import { descentAlong, fallLine, noSurroundings, upSlopeToEdge } from '../../src/descent/index.ts';
import { bankHill, formulaHill } from '../helpers/hill.ts';

const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180);
const origin = { x: 0, y: 0 };
const east = { x: 1, y: 0 };

/** A hill whose fall line is the circle of radius r around (0, r): height falls with the angle along it. */
const spiral = (r: number, slopeDeg: number) =>
  formulaHill((x, y) => {
    const angle = Math.atan2(x, r - y);
    return 100 - tan(slopeDeg) * r * angle + 0.2 * (Math.hypot(x, y - r) - r) ** 2;
  });

describe('descent line', () => {
  it('runs straight to the end of a straight fall line', () => {
    const fall = fallLine(bankHill(35, 40), origin, east, noSurroundings);
    const line = descentAlong(fall)!;
    expect(line.why).toBe('ground levels');
    expect(line.bends).toBe(false);
    expect(line.azimuthDeg).toBeCloseTo(90, 9);
    expect(line.lengthM).toBeCloseTo(fall.x[fall.x.length - 1], 9);
  });

  it('ends where a bending fall line leaves its chord by more than 5 m', () => {
    const r = 60;
    const fall = fallLine(spiral(r, 30), origin, east, noSurroundings);
    const line = descentAlong(fall)!;
    expect(line.why).toBe('fall line bends');
    expect(line.bends).toBe(true);
    // sagitta 5 m: chord 2·√(2·r·5 − 25)
    expect(Math.abs(line.lengthM - 2 * Math.sqrt(2 * r * 5 - 25))).toBeLessThan(2.5);
  });

  it('does not exist on flat ground', () => {
    expect(descentAlong(fallLine(bankHill(0, 10), origin, east, noSurroundings))).toBeNull();
  });
});

describe('up-slope line', () => {
  it('meets the edge above the patient', () => {
    const edge = Float64Array.from({ length: 82 }, (_, i) => (i % 2 ? i - 41 : 0));
    const point = upSlopeToEdge(bankHill(30, 100), { x: 30, y: 7.4 }, { x: -1, y: 0 }, edge)!;
    expect(point.x).toBeCloseTo(0, 9);
    expect(point.y).toBeCloseTo(7.4, 3);
  });

  it('is null where the ground runs out before the edge', () => {
    const edge = Float64Array.of(0, -40, 0, 40);
    const hill = formulaHill((x) => (x < 10 ? Number.NaN : -tan(30) * x));
    expect(upSlopeToEdge(hill, { x: 30, y: 0 }, { x: -1, y: 0 }, edge)).toBeNull();
  });
});
