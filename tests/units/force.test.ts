import { describe, expect, it } from 'vitest';
import { formatForce, knToLbf, lbfToKn, weightKn } from '../../src/units/index.ts';

describe('forces', () => {
  it('convert exactly: 1 lbf is 4.4482216152605 N, a pound of mass weighs a pound-force', () => {
    expect(lbfToKn(1000)).toBeCloseTo(4.4482216152605, 12);
    expect(knToLbf(weightKn(0.45359237))).toBeCloseTo(1, 12);
    expect(knToLbf(lbfToKn(600))).toBeCloseTo(600, 9);
  });

  it('are shown in tens of pounds-force or tenths of a kilonewton, rounded the way that errs on the side asked for', () => {
    expect(formatForce(2.669, 'us')).toBe('600 lbf');
    expect(formatForce(lbfToKn(1231), 'us', 'up')).toBe('1,240 lbf');
    expect(formatForce(lbfToKn(1239), 'us', 'down')).toBe('1,230 lbf');
    expect(formatForce(2.669, 'metric')).toBe('2.7 kN');
    expect(formatForce(2.61, 'metric', 'up')).toBe('2.7 kN');
    expect(formatForce(2.69, 'metric', 'down')).toBe('2.6 kN');
  });
});
