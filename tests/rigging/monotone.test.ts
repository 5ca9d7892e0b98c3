import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultRates } from '../../src/book/index.ts';
import {
  carry,
  fairConditions,
  haul,
  haulForces,
  haulPeople,
  type Job,
  minutes,
  type Tensions,
} from '../../src/rigging/index.ts';
import { anyConditions, anyGround, anyRun, between, worsened } from '../helpers/haul-arbitraries.ts';
import { engine, firstAlarm } from '../helpers/haul-cases.ts';

const seeded = { seed: 20_240_611, numRuns: 400 };
const notLess = (a: number, b: number): void => expect(b).toBeGreaterThanOrEqual(a - 1e-9);
const names: readonly (keyof Tensions)[] = ['walking', 'hanging', 'held', 'belay'];

describe('a steeper slope', () => {
  it('never lowers any tension, 15 to 70°, random loads, contacts and conditions', () => {
    const settings = fc.record({
      litterFriction: between(0, 1),
      attendants: fc.integer({ min: 1, max: 6 }),
      attendantKg: between(70, 150),
      attendantShareLeast: between(0.2, 1),
      patientKg: between(40, 250),
    });
    fc.assert(
      fc.property(anyGround, anyRun, anyConditions, settings, between(0, 55), (ground, run, conditions, own, more) => {
        const rates = { ...defaultRates, ...own };
        const steeper = { ...ground, governingDeg: Math.min(70, ground.governingDeg + more) };
        const gentle = haul(ground, run, conditions, rates).tensionKn;
        const steep = haul(steeper, run, conditions, rates).tensionKn;
        for (const name of names) notLess(gentle[name], steep[name]);
      }),
      seeded,
    );
  });

  it('never lowers the walking tension in steps of a tenth of a degree from 0 to 90', () => {
    const at = (governingDeg: number, wet: boolean): Tensions =>
      haul(
        { governingDeg, lipDeg: 0, ropeLineM: 30, groundLengthM: 30, contacts: [], fullBelay: false },
        {
          kind: 'straight',
          system: 'built in',
          advantage: '3:1',
          edgeToTurnM: 0,
          fieldM: 10,
          belayRunM: 10,
          handTurns: 0,
          walkingRoomM: 30,
          throwRopeM: null,
        },
        { ...fairConditions, wet },
        defaultRates,
      ).tensionKn;
    for (const wet of [false, true]) {
      let before = at(0, wet);
      for (let tenth = 1; tenth <= 900; tenth++) {
        const now = at(tenth / 10, wet);
        for (const name of names) notLess(before[name], now[name]);
        before = now;
      }
    }
  });

  it('keeps walking ≤ hanging and held ≤ belay', () => {
    fc.assert(
      fc.property(anyGround, anyRun, anyConditions, (ground, run, conditions) => {
        const { walking, hanging, held, belay } = haul(ground, run, conditions, defaultRates).tensionKn;
        notLess(walking, hanging);
        notLess(held, belay);
        notLess(held, hanging);
      }),
      seeded,
    );
  });

  it('counts the worst position of the load, wherever it is', () => {
    fc.assert(
      fc.property(anyGround, anyRun, between(0, 80), between(1, 2), (ground, run, angleDeg, contactsFactor) => {
        const plain = haul(ground, run, fairConditions, defaultRates).tensionKn;
        const more = haul({ ...ground, positions: [{ angleDeg, contactsFactor }] }, run, fairConditions, defaultRates);
        for (const name of names) notLess(plain[name], more.tensionKn[name]);
      }),
      seeded,
    );
  });
});

describe('worse conditions', () => {
  it('never improve tension, team, hold, minutes', () => {
    const fall = fc.record({ x: between(-0.1, 0.1), y: between(-0.06, 0.06) });
    fc.assert(
      fc.property(anyGround, anyRun, worsened, fall, (ground, run, { better, worse }, slope) => {
        const fine = haul(ground, run, better, defaultRates);
        const bad = haul(ground, run, worse, defaultRates);
        for (const name of names) notLess(fine.tensionKn[name], bad.tensionKn[name]);
        notLess(fine.team.walking, bad.team.walking);
        notLess(fine.team.allHang, bad.team.allHang);
        notLess(fine.team.sustained, bad.team.sustained);
        notLess(fine.pulls, bad.pulls);

        const anchor = { ...engine('E1', 0), fall: slope };
        const anchors = {
          main: anchor,
          turn: null,
          belay: anchor,
          handTurn: null,
          mainTowardEdge: { x: 1, y: 0.3 },
          belayTowardEdge: { x: 1, y: 0.2 },
        };
        const checks = haulForces(fine, anchors, better, defaultRates);
        haulForces(bad, anchors, worse, defaultRates).forEach((check, i) => {
          expect(check.at).toBe(checks[i]!.at);
          notLess(check.factor!, checks[i]!.factor!);
          if (checks[i]!.ok === 'no') expect(check.ok).toBe('no');
          if (worse.ice && check.kind === 'hold') expect([check.capacityKn, check.ok]).toEqual([0, 'no']);
        });

        const question = { planHigh: false, alternatingLane: false };
        const time = (result: typeof fine, conditions: typeof better) => {
          const people = haulPeople({ ...question, haulTeam: result.team.walking }, firstAlarm);
          return minutes(jobOf(result, people.leastRaise.atMin), conditions, defaultRates);
        };
        const [fast, slow] = [time(fine, better), time(bad, worse)];
        notLess(fast.total ?? Number.POSITIVE_INFINITY, slow.total ?? Number.POSITIVE_INFINITY);
        notLess(fast.rigEnds, slow.rigEnds);
      }),
      seeded,
    );
  });

  it('never make a carry possible, lighter or quicker', () => {
    const ground = fc.record({
      planLow: fc.boolean(),
      step: fc.boolean(),
      lipChangeDeg: between(0, 40),
      angleHighDeg: between(5, 30),
      groundLengthM: between(2, 45),
    });
    let carried = 0;
    fc.assert(
      fc.property(ground, worsened, (slope, { better, worse }) => {
        const fine = carry({ ...slope, planLow: true, step: false }, firstAlarm, better, defaultRates);
        const bad = carry({ ...slope, planLow: true, step: false }, firstAlarm, worse, defaultRates);
        if (bad) {
          expect(fine).not.toBeNull();
          notLess(fine!.bearers, bad.bearers);
          notLess(fine!.minutes!, bad.minutes!);
          carried++;
        }
      }),
      seeded,
    );
    expect(carried).toBeGreaterThan(20);
  });
});

describe('room and rope', () => {
  it('more field never asks for more resets where the rope does not limit', () => {
    fc.assert(
      fc.property(anyGround, anyRun, between(0, 20), (ground, run, more) => {
        const free = { ...run, throwRopeM: null };
        const short = haul(ground, free, fairConditions, defaultRates);
        const long = haul(ground, { ...free, fieldM: run.fieldM + more }, fairConditions, defaultRates);
        notLess(long.resets, short.resets);
        notLess(short.throwM, long.throwM);
      }),
      seeded,
    );
  });

  it('more field never asks for more resets on a haul line of its own, however short', () => {
    fc.assert(
      fc.property(anyGround, anyRun, between(0, 20), between(5, 60), (ground, run, more, throwRopeM) => {
        const line = { ...run, system: 'separate haul line', kind: 'turned', throwRopeM } as const;
        const short = haul(ground, line, fairConditions, defaultRates);
        const long = haul(ground, { ...line, fieldM: run.fieldM + more }, fairConditions, defaultRates);
        notLess(long.resets, short.resets);
      }),
      seeded,
    );
  });

  it('a shorter rope never gives a longer throw or fewer resets, and is never refused for it', () => {
    fc.assert(
      fc.property(anyGround, anyRun, between(0, 1), (ground, run, share) => {
        const ropeM = run.throwRopeM ?? 100;
        const whole = haul(ground, { ...run, throwRopeM: ropeM }, fairConditions, defaultRates);
        const part = haul(ground, { ...run, throwRopeM: ropeM * share }, fairConditions, defaultRates);
        notLess(part.throwM, whole.throwM);
        notLess(whole.resets, part.resets);
        notLess(whole.throwM, haul(ground, { ...run, throwRopeM: null }, fairConditions, defaultRates).throwM);
      }),
      seeded,
    );
  });

  it('the throw taken from a rope is all that rope has', () => {
    fc.assert(
      fc.property(anyGround, anyRun, (ground, run) => {
        const result = haul(ground, { ...run, throwRopeM: 80 }, fairConditions, defaultRates);
        if (result.throwLimitedBy === 'field' || result.throwM === 0) return;
        expect(run.system === 'built in' ? result.ropeM.main : result.ropeM.haul).toBeCloseTo(80, 9);
      }),
      seeded,
    );
  });
});

function jobOf(result: ReturnType<typeof haul>, crewAtMin: number | null): Job {
  return {
    kind: 'straight',
    lowerM: result.raiseM,
    raise: {
      raiseM: result.raiseM,
      idealAdvantage: 3,
      compound: false,
      pulls: result.pulls,
      regripsPerPull: result.regripsPerPull,
      crewAtMin,
    },
    secondApparatusAtMin: 8,
    kitAtMin: 0,
    lowerCrewAtMin: 8,
    patients: 1,
  };
}
