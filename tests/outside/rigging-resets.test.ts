import { describe, expect, it } from 'vitest';
import { defaultRates } from '../../src/book/index.ts';
import { clearField, idealAdvantage, pulls, throwByField, throwByRoom } from '../../src/rigging/index.ts';

// Reset arithmetic without stretch and sit-back (derived): distance, throw → pulls, resets.
const arithmetic = [
  [120, 30, 4, 3],
  [120, 25, 5, 4],
  [200, 30, 7, 6],
  [150, 50, 3, 2],
  [90, 30, 3, 2],
] as const;

describe('pulls and resets (derived)', () => {
  it.each(arithmetic)('%i ft at %i ft of throw: %i pulls, %i resets', (distance, throwFt, count, resets) => {
    expect(pulls(distance, 0, throwFt, 0)).toBe(count);
    expect(pulls(distance, 0, throwFt, 0) - 1).toBe(resets);
  });

  it('120 ft at 3:1: 360 ft of rope through the hands', () => {
    expect(4 * 30 * idealAdvantage('3:1')).toBe(360);
  });

  it('room to walk without a new grip: 60 ft → 20 ft of throw → 6 pulls for 120 ft; 150 ft → 50 ft → 3', () => {
    expect(throwByRoom('3:1', 60)).toBe(20);
    expect(pulls(120, 0, throwByRoom('3:1', 60), 0)).toBe(6);
    expect(throwByRoom('3:1', 150)).toBe(50);
    expect(pulls(120, 0, throwByRoom('3:1', 150), 0)).toBe(3);
  });

  it('compound in one field of 26 m, 51 m to raise, clearances 2.5 m: 3:1 3 pulls, 9:1 7; 10 m under 9:1 21', () => {
    const count = (name: '3:1' | '9:1', fieldM: number): number =>
      pulls(51, 0, throwByField(name, [clearField(fieldM, defaultRates)]), 0);
    expect(count('3:1', 26)).toBe(3);
    expect(count('9:1', 26)).toBe(7);
    expect(count('9:1', 10)).toBe(21);
    expect(throwByField('9:1', [clearField(26, defaultRates)])).toBeLessThan(8);
  });
});
