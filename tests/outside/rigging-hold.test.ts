import { describe, expect, it } from 'vitest';
import { defaultRates } from '../../src/book/index.ts';
import { holdKn } from '../../src/rigging/index.ts';
import { GRAVITY, knToLbf } from '../../src/units/index.ts';

const POUND_KG = 0.45359237;
const down = { x: 0, y: -1 };
const up = { x: 0, y: 1 };
const toEdge = { x: 1, y: 0 };
const falls = (grade: number, crossfall = 0) => ({ x: crossfall, y: -grade });
const lbf = (pounds: number, friction: number, braked: number, grade: number): number =>
  knToLbf(holdKn(pounds * POUND_KG, friction, braked, falls(grade), down));

describe('hold of a parked apparatus (derived)', () => {
  it.each([
    [41_000, 0.5, 1, 0, 20_500],
    [41_000, 0.5, 0.5, 0, 10_250],
    [41_000, 0.35, 1, 0.06, 11_869],
    [41_000, 0.35, 0.5, 0.06, 4_707],
    [41_000, 0.15, 0.5, 0.06, 614],
    [33_000, 0.35, 0.5, 0, 5_775],
  ])(
    '%i lb, friction %d, braked share %d, pulled down a grade of %d: %i lbf (0.5)',
    (pounds, friction, braked, grade, expected) => {
      expect(Math.abs(lbf(pounds, friction, braked, grade) - expected)).toBeLessThanOrEqual(0.5);
    },
  );

  it.each([
    ['down the road', 15_000, 0.35, 0.08, down, 13.76],
    ['up the road', 15_000, 0.35, 0.08, up, 22.63],
    ['across, to the edge', 15_000, 0.35, 0.08, toEdge, 19.89],
    ['down the road, wet', 15_000, 0.25, 0.08, down, 6.36],
    ['across at 2 % grade', 15_000, 0.35, 0.02, toEdge, 22.62],
    ['across at 2 % grade', 3_000, 0.35, 0.02, toEdge, 4.52],
  ])(
    '%s, %i kg, friction %d, grade %d, crossfall 2 %% to the edge: kN (0.005)',
    (_, kg, friction, grade, pull, expected) => {
      expect(
        Math.abs(holdKn(kg, friction, defaultRates.brakedShare, falls(grade, 0.02), pull) - expected),
      ).toBeLessThanOrEqual(0.005);
    },
  );

  it('the shipped friction is that of the worked examples, and wet is less', () => {
    expect([defaultRates.tireFriction, defaultRates.tireFrictionWet]).toEqual([0.35, 0.25]);
    expect(holdKn(1000, 0.35, 1, falls(0), down)).toBeCloseTo((1000 * GRAVITY * 0.35) / 1000, 12);
  });
});
