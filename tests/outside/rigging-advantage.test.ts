import { describe, expect, it } from 'vitest';
import { type AdvantageName, actualAdvantage, idealAdvantage } from '../../src/rigging/index.ts';

// 1 + e + … by sheave efficiency e; the polynomial method is published, the values are derived [source: schwartz-pulley-forces].
const efficiencies = [1, 0.95, 0.9, 0.8, 0.5] as const;
const table: readonly (readonly [AdvantageName, number, readonly number[]])[] = [
  ['2:1', 0, [2, 1.95, 1.9, 1.8, 1.5]],
  ['3:1', 0, [3, 2.853, 2.71, 2.44, 1.75]],
  ['3:1', 1, [3, 2.71, 2.439, 1.952, 0.875]],
  ['5:1', 0, [5, 4.524, 4.095, 3.362, 1.938]],
  ['6:1', 0, [6, 5.562, 5.149, 4.392, 2.625]],
  ['9:1', 0, [9, 8.137, 7.344, 5.954, 3.062]],
];

describe('mechanical advantage with sheave efficiency', () => {
  it.each(table)('%s with %i turns of the hauling line: %j (0.0006)', (name, turns, row) => {
    row.forEach((advantage, i) => {
      expect(Math.abs(actualAdvantage(name, efficiencies[i]!, turns) - advantage)).toBeLessThanOrEqual(0.0006);
    });
  });

  it('three feet of rope for every foot of lift (read) [source: oregon-rescue-notes]', () => {
    expect(idealAdvantage('3:1')).toBe(3);
  });

  it('work: 600 lb × 120 ft = 72,000 ft·lbf at the hand too (read) [source: county-work-check]', () => {
    for (const name of ['2:1', '3:1', '5:1', '6:1', '9:1'] as const) {
      const hand = 600 / actualAdvantage(name, 1);
      expect(hand * 120 * idealAdvantage(name)).toBeCloseTo(72_000, 6);
    }
  });
});
