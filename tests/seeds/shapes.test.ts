import { describe, expect, it } from 'vitest';
import { FALL_COUNT, FALL_STEP_M, fallTable, type SlopeKind } from '../../seeds/road/shapes.ts';

const steepest = (fill: Float32Array, upTo: number) => {
  let most = 0;
  for (let i = 1; i < FALL_COUNT && fill[i] <= upTo; i++) most = Math.max(most, (fill[i] - fill[i - 1]) / FALL_STEP_M);
  return (Math.atan(most) * 180) / Math.PI;
};

describe('a fall table', () => {
  it.each<SlopeKind>(['plane', 'two', 'three', 'convex', 'concave', 'S', 'bench', 'rough'])(
    'of kind %s is as steep as it is asked to be, and no steeper, down to its foot',
    (kind) => {
      const { fill } = fallTable({ kind, angleDeg: 38, heightM: 12 });
      expect(steepest(fill, 12)).toBeCloseTo(38, 0);
    },
  );

  it('has a nearly level foot of over 15 m, so that a descent ends there', () => {
    const { fill } = fallTable({ kind: 'plane', angleDeg: 30, heightM: 10 });
    const foot = fill.findIndex((fall) => fall >= 10);
    expect(foot * FALL_STEP_M).toBeCloseTo(10 / Math.tan(Math.PI / 6), 0);
    expect(fill[foot + 40] - fill[foot]).toBeLessThan(20 * Math.tan((10 * Math.PI) / 180));
  });

  it('carves a floor that rises again beyond the foot', () => {
    const { fill, carve } = fallTable({ kind: 'plane', angleDeg: 30, heightM: 10 });
    expect(carve[60]).toBeCloseTo(fill[60], 3);
    expect(carve[FALL_COUNT - 1]).toBeLessThan(carve[85]);
  });

  it('holds a wall of 2.6 m', () => {
    const { fill } = fallTable({ kind: 'wall', angleDeg: 30, heightM: 12 });
    const most = Math.max(...fill.slice(1, 40).map((fall, i) => fall - fill[i]));
    expect(most).toBeGreaterThan(2.4);
  });

  it('keeps the upper part of a gentle slope a drop: 25 % and more', () => {
    for (const kind of ['two', 'convex', 'S'] as const) {
      const { fill } = fallTable({ kind, angleDeg: 20, heightM: 9 });
      expect((fill[10] - fill[0]) / (10 * FALL_STEP_M)).toBeGreaterThan(0.3);
    }
  });
});
