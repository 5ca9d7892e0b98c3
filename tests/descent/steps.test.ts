import { describe, expect, it } from 'vitest';
import {
  type Hill,
  lineBetween,
  noSurroundings,
  type Surroundings,
  sampleOfLine,
  stepsOn,
} from '../../src/descent/index.ts';
import { bankHill, formulaHill } from '../helpers/hill.ts';

const line = lineBetween({ x: 0, y: 0 }, { x: 60, y: 0 }, 'limit')!;
const stepsOnLine = (hill: Hill, around: Surroundings) => stepsOn(hill, sampleOfLine(hill, line), around);
const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180);

describe('steps', () => {
  it('finds none on a uniform plane of any slope', () => {
    for (let angle = 5; angle <= 80; angle += 5) {
      expect(stepsOnLine(bankHill(angle, 200), noSurroundings)).toEqual([]);
    }
  });

  it('finds none where slopes only change', () => {
    const hill = formulaHill((x) => -tan(20) * Math.max(0, x) - (tan(55) - tan(20)) * Math.max(0, x - 25));
    expect(stepsOnLine(hill, noSurroundings)).toEqual([]);
  });

  it('finds a wall with its place and height', () => {
    for (const height of [2, 3, 4]) {
      for (const slope of [15, 25, 35]) {
        const wall = formulaHill(
          (x) => -tan(slope) * Math.max(0, x) - height * Math.min(1, Math.max(0, (x - 30) / 0.5)),
        );
        const steps = stepsOnLine(wall, noSurroundings);
        expect(steps).toHaveLength(1);
        expect(Math.abs(steps[0].distanceM - 30)).toBeLessThanOrEqual(2);
        expect(Math.abs(steps[0].heightM - height)).toBeLessThan(0.4);
        expect(steps[0].source).toBe('ground');
      }
    }
  });

  it('does not seek steps in data that only screen', () => {
    const wall = formulaHill((x) => -tan(25) * x - (x > 30 ? 4 : 0), { screeningOnly: true });
    expect(stepsOnLine(wall, noSurroundings)).toEqual([]);
  });

  it('tells marked and mapped walls where the descent crosses them', () => {
    const around = {
      ...noSurroundings,
      drops: [
        { source: 'map', line: Float64Array.of(20, -5, 20, 5), heightM: null },
        { source: 'mark', line: Float64Array.of(40, 1), heightM: 2.5 },
        { source: 'mark', line: Float64Array.of(40, 9), heightM: 2.5 },
        { source: 'map', line: Float64Array.of(80, -5, 80, 5), heightM: null },
      ],
    } as const;
    expect(stepsOnLine(bankHill(30, 200), around)).toEqual([
      { distanceM: 20, heightM: 1.5, source: 'map' },
      { distanceM: 40, heightM: 2.5, source: 'mark' },
    ]);
  });
});
