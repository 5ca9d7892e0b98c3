import { describe, expect, it } from 'vitest';
import { defaultRates } from '../../src/book/index.ts';
import { arrivalOf, carry, fairConditions, haulPeople, type Job, minutes } from '../../src/rigging/index.ts';
import { firstAlarm } from '../helpers/haul-cases.ts';

const lowerOnly: Job = {
  kind: 'straight',
  lowerM: 35,
  raise: null,
  secondApparatusAtMin: 0,
  kitAtMin: 0,
  lowerCrewAtMin: 8,
  patients: 1,
};
const raise = { raiseM: 30, idealAdvantage: 3, compound: false, pulls: 3, regripsPerPull: 1, crewAtMin: 12 };
const time = (job: Partial<Job>, conditions = fairConditions) =>
  minutes({ ...lowerOnly, ...job }, conditions, defaultRates);

describe('minutes (common practice, no source)', () => {
  it('lowering to a crossing 35 m down: 13 + 35/6 + 10 = 28.8, shown as 25 to 45', () => {
    expect(time({}).total).toBeCloseTo(28.8, 1);
    expect(time({}).shown).toEqual({ from: 25, to: 45 });
  });

  it('raises at the lesser of 6 m and 18 m over the ideal advantage a minute; compound resets take longer', () => {
    const parts = (idealAdvantage: number, compound = false) =>
      time({ raise: { ...raise, regripsPerPull: 0, idealAdvantage, compound } }).parts.raise;
    expect([parts(2), parts(3), parts(5), parts(9, true)]).toEqual([7, 7, 30 / 3.6 + 2, 15 + 3]);
    expect(time({ raise }).parts.raise).toBe(5 + 2 + 3 * 0.5);
  });

  it('waits for crew, second apparatus and kit, and says how long', () => {
    expect(time({ lowerCrewAtMin: 20 }).parts.wait).toBeCloseTo(7, 9);
    expect(time({ kind: 'turned', secondApparatusAtMin: 8 }).parts.wait).toBe(0);
    expect(time({ kind: 'turned', secondApparatusAtMin: 15 }).parts.wait).toBe(6);
    expect(time({ kitAtMin: 25 }).total).toBeCloseTo(25 + 8 + 35 / 6 + 10, 9);
    expect(time({ kitAtMin: 25 }).rigEnds).toBe(13);
    expect(time({ raise: { ...raise, crewAtMin: 60 } }).total).toBeCloseTo(68.5, 9);
  });

  it('gives no figure where crew, apparatus or kit never come', () => {
    const never: Partial<Job>[] = [
      { lowerCrewAtMin: null },
      { kitAtMin: null },
      { secondApparatusAtMin: null },
      { raise: { ...raise, crewAtMin: null } },
      { raise: { ...raise, pulls: Number.POSITIVE_INFINITY } },
    ];
    for (const job of never) expect(time(job)).toMatchObject({ total: null, shown: null, parts: { wait: null } });
  });

  it('two patients are two cycles after one rigging', () => {
    const one = time({ raise });
    const two = time({ raise, patients: 2 });
    const { lower, package: pack, raise: up } = one.parts;
    expect(two.total! - one.total!).toBeCloseTo(lower + pack + up, 9);
  });

  it('conditions multiply and leave packaging alone: wet 1.25, ice 1.5, night 1.25, wind 1.1', () => {
    const all = { ...fairConditions, wet: true, ice: true, night: true, wind: true };
    expect(time({}, all).parts.lower).toBeCloseTo((35 / 6) * 1.25 * 1.5 * 1.25 * 1.1, 9);
    expect(time({}, all).parts.package).toBe(10);
  });

  it('shows 25 as 25, not as 20: whole steps of five stay', () => {
    expect(time({ lowerM: 12, lowerCrewAtMin: 0 }).shown).toEqual({ from: 25, to: 40 });
  });
});

describe('people (common practice, no source)', () => {
  const people = haulPeople({ haulTeam: 4, planHigh: false, alternatingLane: false }, firstAlarm);

  it('counts four for contact, eight to lower, with the team to raise, fourteen and the team in full', () => {
    expect([people.contact!.count, people.leastLower.count, people.leastRaise.count, people.full.count]).toEqual([
      4, 8, 12, 18,
    ]);
    expect([people.contact!.atMin, people.leastLower.atMin, people.leastRaise.atMin, people.full.atMin]).toEqual([
      0, 8, 12, 25,
    ]);
  });

  it('adds up its roles', () => {
    for (const phase of Object.values(people)) {
      expect(phase!.roles.reduce((sum: number, { count }: { count: number }) => sum + count, 0)).toBe(phase!.count);
    }
  });

  it('wants one more where traffic passes in turns, and has no contact crew where planned as high', () => {
    const other = haulPeople({ haulTeam: 4, planHigh: true, alternatingLane: true }, firstAlarm);
    expect([other.contact, other.leastLower.count, other.leastRaise.count, other.full.count]).toEqual([
      null,
      9,
      13,
      18,
    ]);
  });

  it('knows the minute whatever the order of arrivals, and that some never come', () => {
    expect(arrivalOf(15, [...firstAlarm].reverse())).toBe(12);
    expect(arrivalOf(24, firstAlarm)).toBeNull();
    expect(arrivalOf(4, [])).toBeNull();
  });
});

describe('carry (common practice, no source)', () => {
  const ground = { planLow: true, step: false, lipChangeDeg: 18, angleHighDeg: 20, groundLengthM: 15 };
  const of = (other: Partial<typeof ground>, conditions = fairConditions) =>
    carry({ ...ground, ...other }, firstAlarm, conditions, defaultRates);

  it('20°, 15 m: six bearers, 8 people, from minute 8, 27.5 min shown as 25 to 45', () => {
    expect(of({})).toMatchObject({ bearers: 6, people: 8, atMin: 8, minutes: 27.5, shown: { from: 25, to: 45 } });
  });

  it('25°, 8 m: four bearers, 7 people, 24.0 min shown as 20 to 40', () => {
    const four = of({ angleHighDeg: 25, groundLengthM: 8 })!;
    expect(four).toMatchObject({ bearers: 4, people: 7, atMin: 8, shown: { from: 20, to: 40 } });
    expect(four.minutes).toBeCloseTo(24, 9);
  });

  it('stops at its limits of angle, length, lip, step and class', () => {
    expect(of({ groundLengthM: 40 })?.bearers).toBe(6);
    expect(of({ groundLengthM: 40.01 })).toBeNull();
    expect(of({ angleHighDeg: 25 })?.bearers).toBe(6);
    expect(of({ angleHighDeg: 25, groundLengthM: 15.01 })).toBeNull();
    expect(of({ angleHighDeg: 25.01, groundLengthM: 5 })).toBeNull();
    expect(of({ lipChangeDeg: 29.99 })).not.toBeNull();
    for (const no of [{ lipChangeDeg: 30 }, { step: true }, { planLow: false }, { angleHighDeg: Number.NaN }]) {
      expect(of(no)).toBeNull();
    }
  });

  it('takes 5° off where wet, icy or loose', () => {
    for (const worse of ['wet', 'ice', 'looseGround'] as const) {
      const conditions = { ...fairConditions, [worse]: true };
      expect(of({ angleHighDeg: 20 }, conditions)?.bearers).toBe(6);
      expect(of({ angleHighDeg: 20.01 }, conditions)).toBeNull();
      expect(of({ angleHighDeg: 15, groundLengthM: 40 }, conditions)).not.toBeNull();
      expect(of({ angleHighDeg: 16, groundLengthM: 40 }, conditions)).toBeNull();
    }
  });

  it('has no minutes where the bearers never come', () => {
    expect(carry(ground, [{ atMin: 0, people: 4 }], fairConditions, defaultRates)).toMatchObject({
      atMin: null,
      minutes: null,
    });
  });
});
