import { describe, expect, it } from 'vitest';
import { defaultRates } from '../../../src/book/index.ts';
import { fairConditions } from '../../../src/rigging/index.ts';
import { findWays, type WayQuestion } from '../../../src/spots/index.ts';
import { firstAlarm } from '../../helpers/haul-cases.ts';

/** A low bank of 15 m at 20°, with the crews of the shipped arrivals and two 60 m ropes on each engine. */
const question: WayQuestion = {
  raise: null,
  lowerRunM: 6,
  carryRunM: 6,
  slope: { planLow: true, step: false, lipChangeDeg: 20, angleHighDeg: 20, groundM: 15, ropeLineM: 15 },
  crossings: [],
  arrivals: firstAlarm,
  kits: [
    { unit: 'Engine 1', atMin: 0, tier: 'first arriving', ropesM: [60, 60] },
    { unit: 'Engine 2', atMin: 8, tier: 'first alarm', ropesM: [60, 60] },
  ],
  conditions: fairConditions,
  patients: 1,
  alternatingLane: false,
  units: 'us',
  rates: defaultRates,
};
const steep = { ...question.slope, planLow: false, angleHighDeg: 35, groundM: 60, ropeLineM: 60 };
const lowerLeg = { what: 'road', name: null, groundM: 35, ropeLineM: 35, goesOn: false } as const;
const raise = (total: number | null, ropeReaches = true) => ({
  ropeM: 52,
  ropeReaches,
  people: { count: 13, atMin: total === null ? null : 12 },
  minutes: { total, shown: null },
});

describe('the ways of a site', () => {
  // Check values of the trials on typical roadsides: 10 + 2.5 + 10 + 5, 10 + 8/6 + 10 + 8/3, 13 + 35/6 + 10 [source: derived].
  it('carries 15 m at 20° with six in 27.5 minutes', () => {
    const [way] = findWays(question);
    expect(way).toMatchObject({ kind: 'carry', minutes: 27.5, shown: { from: 25, to: 45 }, allowed: true });
    expect(way.people).toEqual({ count: 8, atMin: 8 });
  });

  it('carries an 8 m bank at 25° with four in 24 minutes', () => {
    const slope = { ...question.slope, angleHighDeg: 25, groundM: 8, ropeLineM: 8 };
    const [way] = findWays({ ...question, slope });
    expect(way.minutes).toBeCloseTo(24, 9);
    expect(way.shown).toEqual({ from: 20, to: 40 });
    expect(way.people).toEqual({ count: 7, atMin: 8 });
  });

  it('lowers 35 m to the lower leg of a switchback in 28.8 minutes', () => {
    const [way] = findWays({ ...question, slope: steep, crossings: [lowerLeg], raise: raise(50) });
    expect(way.kind).toBe('lower');
    expect(way.minutes).toBeCloseTo(28.833, 2);
    expect(way.shown).toEqual({ from: 25, to: 45 });
    expect(way.people).toEqual({ count: 8, atMin: 8 });
    expect(way.meets).toContain('ambulance');
    expect(way.ropeM).toBeCloseTo(35 + 1.5 + 6 + 4, 9);
  });

  it('ranks by minutes among those that rope and people allow', () => {
    const kinds = (change: Partial<WayQuestion>) => findWays({ ...question, ...change }).map(({ kind }) => kind);
    expect(kinds({ raise: raise(26) })).toEqual(['raise', 'carry']);
    expect(kinds({ raise: raise(40) })).toEqual(['carry', 'raise']);
    // Nobody comes, or no rope reaches: behind all that can be done.
    expect(kinds({ raise: raise(null) })).toEqual(['carry', 'raise']);
    expect(kinds({ raise: raise(10, false) })).toEqual(['carry', 'raise']);
  });

  it('puts a way that ends on a trail behind one that ends at a vehicle, however short', () => {
    const trail = { ...lowerLeg, what: 'trail', groundM: 5, ropeLineM: 5 } as const;
    const ways = findWays({ ...question, slope: steep, crossings: [trail], raise: raise(60) });
    expect(ways.map(({ kind }) => kind)).toEqual(['raise', 'lower']);
    expect(ways[1].why.join(' ')).toMatch(/carry out from there, is not counted/);
  });

  it('neither lowers nor carries without an anchor', () => {
    expect(findWays({ ...question, crossings: [lowerLeg], lowerRunM: null, carryRunM: null })).toEqual([]);
  });

  it('carries nothing planned steeper than low, over a step, or over a sharp lip', () => {
    for (const change of [{ planLow: false }, { step: true }, { lipChangeDeg: 30 }]) {
      expect(findWays({ ...question, slope: { ...question.slope, ...change } })).toEqual([]);
    }
  });

  it('says how a way is not to be had', () => {
    const kits = [{ unit: 'Engine 1', atMin: 0, tier: 'first arriving', ropesM: [20] }] as const;
    const [way] = findWays({ ...question, kits });
    expect(way).toMatchObject({ allowed: false, minutes: null });
    expect(way.why.join(' ')).toContain('No single rope that comes reaches');
    const few = findWays({ ...question, arrivals: [{ atMin: 0, people: 4 }], crossings: [lowerLeg] });
    expect(few.map(({ allowed }) => allowed)).toEqual([false, false]);
  });

  it('never gets better in worse conditions or with more patients', () => {
    const crossings = [lowerLeg];
    const worse = [{ wet: true }, { ice: true }, { night: true }, { wind: true }].map((change) =>
      findWays({ ...question, crossings, conditions: { ...fairConditions, ...change } }),
    );
    const fair = findWays({ ...question, crossings });
    for (const ways of [...worse, findWays({ ...question, crossings, patients: 2 })]) {
      for (const way of ways) {
        const before = fair.find(({ kind }) => kind === way.kind)!;
        expect(way.minutes!).toBeGreaterThanOrEqual(before.minutes!);
        expect(way.people.count).toBeGreaterThanOrEqual(before.people.count);
      }
    }
    // Two patients are carried in two cycles.
    const two = findWays({ ...question, patients: 2 })[0];
    expect(two.minutes).toBeCloseTo(10 + 2 * 17.5, 9);
  });
});
