import { describe, expect, it } from 'vitest';
import { crossingsOn, lineBetween, noSurroundings, profileAlong } from '../../src/descent/index.ts';
import { bankHill, formulaHill } from '../helpers/hill.ts';

const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180);
const line = lineBetween({ x: 0, y: 0 }, { x: 60, y: 0 }, 'limit')!;
const steady = bankHill(32, 100);
/** A level bench from 25 to 25 + width on a 32° slope. */
const benched = (width: number) => formulaHill((x) => -tan(32) * (x - Math.min(width, Math.max(0, x - 25))));

describe('crossings', () => {
  it('finds none on an even slope', () => {
    expect(crossingsOn(line, profileAlong(steady, line), noSurroundings)).toEqual([]);
  });

  it('finds a bench of the ground and its width, and none under 3 m', () => {
    const [bench, ...more] = crossingsOn(line, profileAlong(benched(5), line), noSurroundings);
    expect(more).toEqual([]);
    expect(bench.kind).toBe('bench');
    expect(Math.abs(bench.distanceM - 25)).toBeLessThan(0.6);
    expect(Math.abs(bench.widthM - 5)).toBeLessThan(1);
    expect(crossingsOn(line, profileAlong(benched(1.5), line), noSurroundings)).toEqual([]);
  });

  it('finds roads, trails and water with their widths, obliquely too', () => {
    const around = {
      ...noSurroundings,
      bands: [
        { kind: 'road', line: Float64Array.of(20, -40, 20, 40), halfWidthM: 3 },
        { kind: 'trail', line: Float64Array.of(10, -30, 70, 30), halfWidthM: 1 },
        { kind: 'water', line: Float64Array.of(55, -40, 55, 40), halfWidthM: 0.5 },
      ],
    } as const;
    const found = crossingsOn(line, profileAlong(steady, line), around);
    expect(found.map((c) => c.kind)).toEqual(['road', 'trail', 'water']);
    expect(Math.abs(found[0].distanceM - 17)).toBeLessThan(0.26);
    expect(Math.abs(found[0].widthM - 6)).toBeLessThan(0.51);
    expect(Math.abs(found[1].widthM - 2 * Math.SQRT2)).toBeLessThan(0.51);
  });

  it('tells the lower leg of the own road by its outline, not the road at the edge', () => {
    const square = (from: number, to: number) => Float64Array.of(from, -50, to, -50, to, 50, from, 50);
    const around = {
      ...noSurroundings,
      areas: [
        { kind: 'road', ring: square(-8, 0.5) },
        { kind: 'road', ring: square(34, 42) },
      ],
    } as const;
    const found = crossingsOn(line, profileAlong(steady, line), around);
    expect(found).toHaveLength(1);
    expect(Math.abs(found[0].distanceM - 34)).toBeLessThan(0.26);
    expect(Math.abs(found[0].widthM - 8)).toBeLessThan(0.51);
  });

  it('does not tell a mapped road a second time as a bench', () => {
    const around = {
      ...noSurroundings,
      bands: [{ kind: 'road', line: Float64Array.of(27.5, -40, 27.5, 40), halfWidthM: 2.5 }],
    } as const;
    const found = crossingsOn(line, profileAlong(benched(5), line), around);
    expect(found.map((c) => c.kind)).toEqual(['road']);
  });
});
