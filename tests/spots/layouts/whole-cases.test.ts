import { describe, expect, it } from 'vitest';
import { defaultArrivals, defaultFleet, defaultKits, defaultRates, type UnitArrival } from '../../../src/book/index.ts';
import type { ForceCheck } from '../../../src/rigging/index.ts';
import { evaluate, meansOf } from '../../../src/spots/index.ts';
import { type HaulCase, haulCases } from '../../helpers/haul-cases.ts';

const lone: readonly UnitArrival[] = defaultArrivals.filter(({ unit }) => /Engine 1|Medic|Mutual/.test(unit));

const of = (one: HaulCase) =>
  evaluate(
    {
      ...{ ground: one.ground, run: one.run, anchors: one.anchors, alternatingLane: false },
      apparatusAtMin: one.secondApparatusAtMin,
    },
    meansOf({
      ...{ rates: defaultRates, conditions: one.conditions, fleet: defaultFleet, kits: defaultKits },
      ...{ arrivals: one.arrivals.length === 3 ? lone : defaultArrivals, patients: 1, planHigh: false },
    }),
  );

const printed = (value: number, digits: number, expected: number): void =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(0.5 * 10 ** -digits + 1e-9);
const factorOf = (checks: readonly ForceCheck[], at: string): number =>
  checks.find((check) => check.at === at && check.kind === 'hold')!.factor!;

describe.each(haulCases)('a layout of case $name (derived)', (one) => {
  const { printed: want } = one;
  const result = of(one);

  it('has the tensions, the pull, the team and the hold factors as printed', () => {
    const { tensionKn, pullKn, team, contactsFactor } = result.haul;
    printed(contactsFactor, 3, want.k);
    [tensionKn.walking, tensionKn.hanging, tensionKn.held, tensionKn.belay].forEach((kn, i) => {
      printed(kn, 3, want.tensions[i]!);
    });
    printed(pullKn.walking, 3, want.pull);
    expect([team.walking, team.allHang, team.sustained]).toEqual(want.team);
    const [turn, anchor, belay] = want.holds;
    if (turn !== null) printed(factorOf(result.forces, 'change of direction, hauling'), 2, turn);
    printed(factorOf(result.forces, 'main anchor, hauling'), 2, anchor);
    printed(factorOf(result.forces, 'belay anchor'), 2, belay);
    expect(result.governing.verdict).toBe('yes');
  });

  it('has throw, pulls, ropes, people and minutes as printed, its rope at hand when rigging ends', () => {
    const { throwM, raiseM, pulls, regripsPerPull, ropeM } = result.haul;
    printed(throwM, 2, want.throwM);
    printed(raiseM, 2, want.raiseM);
    expect([pulls, regripsPerPull]).toEqual([want.pulls, want.regrips]);
    printed(ropeM.main, 2, want.ropes[0]);
    printed(ropeM.belay, 2, want.ropes[2]);
    if (want.ropes[1] === null) expect(ropeM.haul).toBeNull();
    else printed(ropeM.haul!, 2, want.ropes[1]);
    expect([result.people.leastRaise.count, result.people.full.count]).toEqual(want.people);
    expect(result.kitAtHand).toBe(true);
    printed(result.minutes.total!, 1, want.minutes);
  });
});

describe('a layout of case C', () => {
  it('ties two attachments at the turn where one falls short, and tells the slip check', () => {
    const result = of(haulCases[2]!);
    const turn = result.forces.find(({ kind }) => kind === 'turn')!;
    expect(turn.points).toBe(2);
    printed(turn.factor!, 1, 8.5);
    expect(result.forces.find(({ kind }) => kind === 'grab')!.ok).toBe('judge on site');
  });
});
