import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultArrivals, defaultKits, defaultRates, ropeLengths } from '../../src/book/index.ts';
import {
  type Fit,
  haul,
  type KitArrival,
  type RopeNeed,
  ropeFits,
  ropeLeft,
  ropeNeed,
  stagesNeeded,
} from '../../src/rigging/index.ts';
import { between } from '../helpers/haul-arbitraries.ts';
import { haulCases } from '../helpers/haul-cases.ts';

const seeded = { seed: 5_180, numRuns: 300 };
const kit = (ropesM: number[], tier: KitArrival['tier'] = 'first arriving', atMin = 0): KitArrival => ({
  unit: tier,
  atMin,
  tier,
  ropesM,
});
const engines = [kit([60, 60]), kit([60, 60], 'first alarm', 8), kit([90, 90], 'mutual aid', 25)];
const order: readonly Fit[] = ['no', 'joined', 'yes'];

describe('rope at hand', () => {
  it('tells first arriving, first alarm and mutual aid apart, and who brings what is missing', () => {
    const one = haulCases[1]!;
    const need = haul(one.ground, one.run, one.conditions, defaultRates).ropeM;
    const fits = ropeFits(need, engines, defaultRates);
    expect([fits.firstArriving.fit, fits.firstAlarm.fit, fits.mutualAid.fit]).toEqual(['no', 'yes', 'yes']);
    expect(fits.firstArriving.short).toEqual([{ line: 'haul', byM: 56.5, unit: 'first alarm', atMin: 8 }]);
    expect(fits.from).toEqual({ unit: 'first alarm', atMin: 8 });
  });

  it('100 m of ground: main 17 m and belay 21 m short of 90 m ropes; two stages with them, three with 60 m', () => {
    const run = { ...haulCases[1]!.run, edgeToTurnM: 2.75 };
    const need = ropeNeed(101.5, run, 17.5, defaultRates);
    const fits = ropeFits(need, engines, defaultRates);
    expect(fits.mutualAid.fit).not.toBe('yes');
    expect(fits.mutualAid.short.map(({ line, byM }) => [line, byM])).toEqual([
      ['belay', 21.25],
      ['main', 17.25],
    ]);
    expect(fits.from).toBeNull();
    const takenPerStage = need.belay - 100;
    expect([stagesNeeded(100, 90, takenPerStage), stagesNeeded(100, 60, takenPerStage)]).toEqual([2, 3]);
    expect(stagesNeeded(100, 11, takenPerStage)).toBe(Number.POSITIVE_INFINITY);
  });

  it('80 m of ground: the belay is 1.25 m short even of 90 m', () => {
    const need = ropeNeed(81.5, haulCases[1]!.run, 17.5, defaultRates);
    expect(ropeFits(need, engines, defaultRates).mutualAid.short).toEqual([
      { line: 'belay', byM: 1.25, unit: null, atMin: null },
    ]);
  });

  it('joins two ropes only where nothing single reaches, less what the knot takes', () => {
    const need: RopeNeed = { main: 100, belay: 50, haul: null };
    const outcome = (ropesM: number[]): Fit => ropeFits(need, [kit(ropesM)], defaultRates).firstArriving.fit;
    expect(outcome([100, 50])).toBe('yes');
    expect(outcome([60, 60, 60])).toBe('joined');
    expect(outcome([60, 41, 50])).toBe('joined');
    expect(outcome([60, 40.9, 50])).toBe('no');
    expect(outcome([60, 60])).toBe('no');
    expect(outcome([])).toBe('no');
  });

  it('a rope that is just long enough fits', () => {
    const fits = (main: number): Fit =>
      ropeFits({ main, belay: 0.1 + 0.2, haul: null }, [kit([60, 0.3])], defaultRates).firstArriving.fit;
    expect([fits(60), fits(60 + 1e-6)]).toEqual(['yes', 'no']);
  });

  it('a rope of unknown strength does not count', () => {
    const ropes = [
      { lengthM: 60, diameterMm: 12.5, ratedKn: null, count: 1 },
      { lengthM: 50, diameterMm: 11, ratedKn: 20, count: 1 },
      { lengthM: 45, diameterMm: 12.5, ratedKn: 40, count: 2 },
    ];
    expect(ropeLengths({ id: 'k', name: 'k', ropes, items: [] }, 40)).toEqual([45, 45]);
  });

  it('the shipped arrivals bring two 60 m ropes, then two more, then two of 90 m', () => {
    const lengths = (kitIds: readonly string[]) =>
      kitIds.flatMap((id) => ropeLengths(defaultKits.find((one) => one.id === id)!, 40));
    expect(defaultArrivals.map(({ atMin, kitIds }) => [atMin, ...lengths(kitIds)])).toEqual([
      [0, 60, 60],
      [8, 60, 60],
      [9],
      [10],
      [12],
      [25, 90, 90],
    ]);
  });
});

/** Tries every way to hand ropes to lines: -1 leaves a rope in its bag. */
function bruteFit(needs: readonly number[], ropes: readonly number[], mostEach: 1 | 2, joinTakesM: number): boolean {
  const owner = ropes.map(() => -1);
  const good = (): boolean =>
    needs.every((need, line) => {
      const mine = ropes.filter((_, i) => owner[i] === line);
      const length = mine.reduce((a, b) => a + b, 0) - joinTakesM * Math.max(0, mine.length - 1);
      return mine.length > 0 && mine.length <= mostEach && length + 1e-9 >= need;
    });
  const tryFrom = (i: number): boolean => {
    if (i === ropes.length) return good();
    for (let line = -1; line < needs.length; line++) {
      owner[i] = line;
      if (tryFrom(i + 1)) return true;
    }
    return false;
  };
  return tryFrom(0);
}

const lengths = fc.array(fc.constantFrom(30, 45, 60, 61, 75, 90), { maxLength: 6 });
const needs = fc.record({
  main: fc.integer({ min: 20, max: 130 }),
  belay: fc.integer({ min: 20, max: 130 }),
  haul: fc.option(fc.integer({ min: 10, max: 90 })),
});

describe('rope at hand, by trying every way to hand it out', () => {
  it('agrees for single and joined ropes', () => {
    const seen = new Set<Fit>();
    fc.assert(
      fc.property(needs, lengths, (need, ropesM) => {
        const list = [need.main, need.belay, ...(need.haul === null ? [] : [need.haul])];
        const single = bruteFit(list, ropesM, 1, defaultRates.joinTakesM);
        const want: Fit = single ? 'yes' : bruteFit(list, ropesM, 2, defaultRates.joinTakesM) ? 'joined' : 'no';
        const { firstArriving } = ropeFits(need, [kit(ropesM)], defaultRates);
        expect(firstArriving.fit).toBe(want);
        expect(firstArriving.short.length > 0).toBe(want !== 'yes');
        seen.add(want);
      }),
      seeded,
    );
    expect([...seen].sort()).toEqual(['joined', 'no', 'yes']);
  });

  it('leaves the longest rope that can be spared', () => {
    fc.assert(
      fc.property(needs, lengths, (need, ropesM) => {
        const list = [need.main, need.belay];
        const spare = ropesM.filter((_, left) =>
          bruteFit(
            list,
            ropesM.filter((_rope, i) => i !== left),
            1,
            0,
          ),
        );
        expect(ropeLeft(list, ropesM)).toBe(spare.length > 0 ? Math.max(...spare) : null);
      }),
      seeded,
    );
  });

  it('a shorter rope never fits better', () => {
    fc.assert(
      fc.property(needs, lengths, fc.nat(), between(0, 1), (need, ropesM, which, share) => {
        if (ropesM.length === 0) return;
        const cut = ropesM.map((lengthM, i) => (i === which % ropesM.length ? lengthM * share : lengthM));
        const outcome = (ropes: number[]) => ropeFits(need, [kit(ropes)], defaultRates).firstArriving;
        expect(order.indexOf(outcome(cut).fit)).toBeLessThanOrEqual(order.indexOf(outcome(ropesM).fit));
        const missing = (ropes: number[]) => outcome(ropes).short.reduce((sum, { byM }) => sum + byM, 0);
        expect(missing(cut)).toBeGreaterThanOrEqual(missing(ropesM) - 1e-9);
      }),
      seeded,
    );
  });
});
