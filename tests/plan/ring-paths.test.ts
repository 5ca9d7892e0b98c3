import { describe, expect, test } from 'vitest';
import { ringPaths, ringRadius } from '../../src/plan/index.ts';

describe('the ring of a class', () => {
  test.each([
    ['low', 20],
    ['steep', 40],
    ['high', 66],
    ['undecided', 40],
  ] as const)('%s ground falls at %i° from its break to the ring, and starts on the ring', (look, slopeDeg) => {
    const { ground, fill } = ringPaths(look);
    const [x0, y0, x1, x2, y2] = /^M([\d.]+) ([\d.]+)H([\d.]+)L([\d.]+) ([\d.]+)$/
      .exec(ground)!
      .slice(1)
      .map(Number) as [number, number, number, number, number];
    expect((Math.atan2(y2 - y0, x2 - x1) * 180) / Math.PI).toBeCloseTo(slopeDeg, 0);
    for (const [x, y] of [
      [x0, y0],
      [x2, y2],
    ] as const) {
      expect(Math.hypot(x - 12, y - 12)).toBeCloseTo(ringRadius, 1);
    }
    expect(fill.startsWith(ground)).toBe(true);
    expect(fill.endsWith(`${x0} ${y0}Z`)).toBe(true);
  });

  test('one that is not worked out is empty, and only undecided ground is crossed', () => {
    expect(ringPaths(null)).toEqual({ ground: '', fill: '', hatch: '' });
    expect(ringPaths('undecided').hatch.length).toBeGreaterThan(ringPaths('steep').hatch.length);
    expect(ringPaths('low').hatch + ringPaths('high').hatch).toBe('');
  });
});
