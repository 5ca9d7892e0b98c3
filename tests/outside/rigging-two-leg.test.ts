import { describe, expect, it } from 'vitest';
import { twoLegKn } from '../../src/rigging/index.ts';
import { toRadians } from '../../src/units/index.ts';

// Share of the load on each leg by the angle between them, as a climbing textbook prints it; derived as well [source: two-leg-textbook].
const shares = [
  [60, 0.577],
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: the value as it is printed
  [90, 0.707],
  [120, 1.0],
  [150, 1.932],
] as const;

describe('two-leg anchor against a climbing textbook', () => {
  it.each(shares)('%i° between the legs: %d of the load on each (0.0005)', (deg, share) => {
    expect(Math.abs(twoLegKn(1, toRadians(deg)) - share)).toBeLessThanOrEqual(0.0005);
  });
});
