import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultAngleRule } from '../../src/book/index.ts';
import { classShares, namedClass, planAs } from '../../src/descent/index.ts';

const rule = defaultAngleRule;
const none = { step: false, screeningOnly: false };
const rank = { low: 0, undecided: 1, steep: 1, high: 2 } as const;
/** An angle known exactly: equality counts as at or over a limit. */
const exactly = (angleDeg: number) => (limitDeg: number) => (angleDeg >= limitDeg ? 1 : 0);

describe('angle class', () => {
  it('goes to the steeper class on equality', () => {
    const named = (a: number) => namedClass(classShares(exactly(a), rule), false);
    expect(named(30)).toBe('steep');
    expect(named(29.999999)).toBe('low');
    expect(named(45)).toBe('high');
    expect(named(44.999999)).toBe('steep');
  });

  it('needs 0.95 for low and 0.80 for the others', () => {
    expect(namedClass({ low: 0.95, steep: 0.05, high: 0 }, false)).toBe('low');
    expect(namedClass({ low: 0.94, steep: 0.06, high: 0 }, false)).toBe('undecided');
    expect(namedClass({ low: 0.2, steep: 0.8, high: 0 }, false)).toBe('steep');
    expect(namedClass({ low: 0, steep: 0.2, high: 0.8 }, false)).toBe('high');
  });

  it('plans high over 10 % or a step, low only at 95 %', () => {
    const chance = (notLow: number, high: number) => (limit: number) => (limit === rule.highMinDeg ? high : notLow);
    expect(planAs(chance(1, 0.11), rule, 'steep', none)).toBe('high');
    expect(planAs(chance(1, 0.1), rule, 'steep', none)).toBe('steep');
    expect(planAs(chance(0.05, 0), rule, 'low', none)).toBe('low');
    expect(planAs(chance(0.06, 0), rule, 'undecided', none)).toBe('steep');
    expect(planAs(chance(0, 0), rule, 'low', { ...none, step: true })).toBe('high');
  });

  it('never tells or plans low in data that only screen', () => {
    expect(namedClass({ low: 1, steep: 0, high: 0 }, true)).toBe('undecided');
    expect(planAs(exactly(5), rule, 'undecided', { step: false, screeningOnly: true })).toBe('steep');
  });

  it('never plans gentler than the class it names', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), (p, q) => {
        const chance = (limit: number) => (limit === rule.highMinDeg ? Math.min(p, q) : Math.max(p, q));
        const named = namedClass(classShares(chance, rule), false);
        expect(rank[planAs(chance, rule, named, none)]).toBeGreaterThanOrEqual(rank[named]);
      }),
    );
  });
});
