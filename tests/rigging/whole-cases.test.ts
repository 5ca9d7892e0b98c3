import { describe, expect, it } from 'vitest';
import { defaultRates } from '../../src/book/index.ts';
import {
  type ForceCheck,
  governs,
  haul,
  haulForces,
  haulPeople,
  idealAdvantage,
  isCompound,
  minutes,
} from '../../src/rigging/index.ts';
import { caseDDown, type HaulCase, haulCases } from '../helpers/haul-cases.ts';

const work = (one: HaulCase) => haul(one.ground, one.run, one.conditions, defaultRates);
const factorOf = (checks: readonly ForceCheck[], at: string, kind: ForceCheck['kind']): number =>
  checks.find((check) => check.at === at && check.kind === kind)!.factor!;

/** Equal to a printed figure: within half of its last digit. */
const printed = (value: number, digits: number, expected: number): void =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(0.5 * 10 ** -digits + 1e-9);

describe.each(haulCases)('case $name (derived)', (one) => {
  const { printed: want } = one;
  const result = work(one);

  it('has the contacts factor, the four tensions and the hand pull', () => {
    printed(result.contactsFactor, 3, want.k);
    const { walking, hanging, held, belay } = result.tensionKn;
    [walking, hanging, held, belay].forEach((kn, i) => {
      printed(kn, 3, want.tensions[i]!);
    });
    printed(result.pullKn.walking, 3, want.pull);
  });

  it('has the haul team: walking, all hanging, sustained', () => {
    expect([result.team.walking, result.team.allHang, result.team.sustained]).toEqual(want.team);
  });

  it('has throw, raise, pulls and new grips', () => {
    printed(result.throwM, 2, want.throwM);
    printed(result.raiseM, 2, want.raiseM);
    expect([result.pulls, result.resets, result.regripsPerPull]).toEqual([want.pulls, want.pulls - 1, want.regrips]);
    expect(result.workable && result.practical).toBe(true);
  });

  it('has the rope of each line', () => {
    printed(result.ropeM.main, 2, want.ropes[0]);
    printed(result.ropeM.belay, 2, want.ropes[2]);
    if (want.ropes[1] === null) expect(result.ropeM.haul).toBeNull();
    else printed(result.ropeM.haul!, 2, want.ropes[1]);
  });

  it('has the hold factors at turn, anchor and belay, and the least of them governs sliding', () => {
    const checks = haulForces(result, one.anchors, one.conditions, defaultRates);
    const [turn, anchor, belay] = want.holds;
    if (turn !== null) printed(factorOf(checks, 'change of direction, hauling', 'hold'), 2, turn);
    printed(factorOf(checks, 'main anchor, hauling', 'hold'), 2, anchor);
    printed(factorOf(checks, 'belay anchor', 'hold'), 2, belay);
    printed(governs(checks).leastHoldFactor!, 2, Math.min(turn ?? anchor, anchor, belay));
    expect(governs(checks).verdict).toBe('yes');
  });

  it('has the people and the minutes', () => {
    const question = { haulTeam: result.team.walking, planHigh: false, alternatingLane: false };
    const people = haulPeople(question, one.arrivals);
    expect([people.leastRaise.count, people.full.count]).toEqual(want.people);
    expect([people.contact!.count, people.leastLower.count]).toEqual([4, 8]);
    const { raiseM, pulls, regripsPerPull } = result;
    const job = {
      kind: one.run.kind,
      lowerM: one.ground.groundLengthM,
      raise: {
        raiseM,
        pulls,
        regripsPerPull,
        idealAdvantage: idealAdvantage(one.run.advantage),
        compound: isCompound(one.run.advantage),
        crewAtMin: people.leastRaise.atMin,
      },
      secondApparatusAtMin: one.secondApparatusAtMin,
      kitAtMin: 0,
      lowerCrewAtMin: people.leastLower.atMin,
      patients: 1,
    };
    const time = minutes(job, one.conditions, defaultRates);
    printed(time.total!, 1, want.minutes);
    const { closure, rig, lower, package: pack, raise, wait } = time.parts;
    expect(closure + rig + lower + pack + raise + wait!).toBeCloseTo(time.total!, 9);
  });
});

describe('beside the whole cases (derived)', () => {
  it('D with the anchor down the road: 2.78, 5.91, 7.43', () => {
    const one = haulCases[3]!;
    const checks = haulForces(work(one), caseDDown, one.conditions, defaultRates);
    printed(factorOf(checks, 'change of direction, hauling', 'hold'), 2, 2.78);
    printed(factorOf(checks, 'main anchor, hauling', 'hold'), 2, 5.91);
    printed(factorOf(checks, 'belay anchor', 'hold'), 2, 7.43);
    expect(governs(checks).verdict).toBe('no');
  });

  it('C at the turn: one attachment 4.9 of 5 while hauling, two 8.5', () => {
    const one = haulCases[2]!;
    const turn = (attachments: number): ForceCheck => {
      const { turn: bend, ...rest } = one.anchors;
      const anchor = { ...bend!.anchor, id: 'E9', attachments } as typeof rest.main;
      const checks = haulForces(work(one), { ...rest, turn: { ...bend!, anchor } }, one.conditions, defaultRates);
      return checks.find((check) => check.kind === 'turn')!;
    };
    printed(turn(1).factor!, 1, 4.9);
    expect([turn(1).ok, turn(1).points]).toEqual(['no', 1]);
    printed(turn(2).factor!, 1, 8.5);
    expect([turn(2).ok, turn(2).points]).toEqual(['yes', 2]);
  });

  it('C asks to check the haul grab: six people where three may be on the rope at once', () => {
    const { team } = work(haulCases[2]!);
    expect([team.walking, team.handsAtOnce, team.checkGrab]).toEqual([6, 3, true]);
    expect(work(haulCases[0]!).team.checkGrab).toBe(false);
  });

  it('straight on the bench of B with two 60 m ropes: throw 2.25 by the rope, 2.50 by the field, 23 resets', () => {
    const base = haulCases[1]!;
    const run = { ...haulCases[4]!.run, fieldM: 5, belayRunM: 5, handTurns: 0, throwRopeM: 60 };
    const byRope = haul(base.ground, run, base.conditions, defaultRates);
    printed(byRope.throwM, 2, 2.25);
    expect([byRope.throwLimitedBy, byRope.resets, byRope.practical]).toEqual(['rope', 23, false]);
    const byField = haul(base.ground, { ...run, throwRopeM: null }, base.conditions, defaultRates);
    printed(byField.throwM, 2, 2.5);
    expect(byField.throwLimitedBy).toBe('field');
  });
});
