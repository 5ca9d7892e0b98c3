import { describe, expect, it } from 'vitest';
import { defaultRates } from '../../src/book/index.ts';
import {
  type Anchor,
  type ForceCheck,
  fairConditions,
  gearChecks,
  governs,
  type HaulAnchors,
  haul,
  haulForces,
  holdCheck,
  strengthCheck,
  tireFriction,
} from '../../src/rigging/index.ts';
import { engine, haulCases } from '../helpers/haul-cases.ts';

const turnedCase = haulCases[0]!;
const straightCase = haulCases[4]!;
const of = (one: typeof turnedCase) => haul(one.ground, one.run, one.conditions, defaultRates);
const checksOf = (one: typeof turnedCase, anchors: HaulAnchors = one.anchors): ForceCheck[] =>
  haulForces(of(one), anchors, one.conditions, defaultRates);
const find = (checks: readonly ForceCheck[], at: string, kind: ForceCheck['kind']): ForceCheck =>
  checks.find((check) => check.at === at && check.kind === kind)!;

describe('forces of a turned haul', () => {
  const checks = checksOf(turnedCase);
  const { tensionKn, farKn } = of(turnedCase);

  it('the turn carries the resultant while hauling, at 5 : 1, and one tension while held, at 10 : 1', () => {
    const hauling = find(checks, 'change of direction, hauling', 'turn');
    expect(hauling.kn).toBeCloseTo(Math.hypot(tensionKn.hanging, farKn.hanging), 9);
    expect(hauling.required).toBe(5);
    const held = find(checks, 'change of direction, held', 'strength');
    expect([held.kn, held.required]).toEqual([tensionKn.held, 10]);
  });

  it('pulls the turn between edge and anchor, more towards the anchor, and the anchor back to the turn', () => {
    // Edge to the south, anchor to the east: south-east, and west.
    const turn = find(checks, 'change of direction, hauling', 'hold').towardDeg!;
    expect(turn).toBeLessThan(135);
    expect(turn).toBeGreaterThan(128);
    expect(find(checks, 'main anchor, hauling', 'hold').towardDeg).toBeCloseTo(270, 9);
    expect(find(checks, 'belay anchor', 'hold').towardDeg).toBeCloseTo(180, 9);
  });

  it('the sheave makes the far leg the tighter one', () => {
    expect(farKn.hanging).toBeCloseTo(tensionKn.hanging / 0.9, 12);
    expect(find(checks, 'main anchor, hauling', 'strength').kn).toBe(farKn.hanging);
  });
});

describe('forces of a straight haul', () => {
  it('the anchor holds device and capture: 5 : 1 hauling with all hanging, 10 : 1 held', () => {
    const checks = checksOf(straightCase);
    const strength = checks.filter(({ at, kind }) => at.startsWith('main anchor') && kind === 'strength');
    expect(strength.map(({ required }) => required)).toEqual([5, 10]);
    expect(strength[0]!.kn).toBe(of(straightCase).tensionKn.hanging);
  });

  it('the turn of the hauling end carries 1.41 times the hand pull at a right angle', () => {
    const handTurn = { anchor: engine('E2', 0), towardSystem: { x: 0, y: 1 }, alongTeam: { x: 1, y: 0 } };
    const checks = checksOf(straightCase, { ...straightCase.anchors, handTurn });
    const { kn } = find(checks, 'turn of the hauling end', 'hold');
    expect(kn).toBeCloseTo(Math.SQRT2 * of(straightCase).pullKn.hanging, 9);
  });
});

describe('main and belay on one apparatus', () => {
  const shared = (attachments: number): ForceCheck[] => {
    const anchor = { ...engine('E1', 0.02), attachments };
    return checksOf(straightCase, { ...straightCase.anchors, main: anchor, belay: anchor });
  };

  it('takes an attachment each', () => {
    expect(governs(shared(2)).verdict).toBe('yes');
    expect(find(shared(1), 'belay anchor', 'belay')).toMatchObject({ capacityKn: 0, ok: 'no' });
    expect(find(shared(1), 'main anchor, held', 'strength').ok).toBe('no');
  });

  it('slides under the larger of the two forces, never under both', () => {
    const { leastHoldFactor } = governs(shared(2));
    const { tensionKn } = of(straightCase);
    const { capacityKn } = find(shared(2), 'main anchor, hauling', 'hold');
    expect(leastHoldFactor).toBeCloseTo(capacityKn! / Math.max(tensionKn.hanging, tensionKn.belay), 9);
  });

  it('a two-point tie does not take the attachment that the belay needs', () => {
    const weak = { ...engine('E1', 0.02), attachmentKn: 14, attachments: 2 };
    const alone = strengthCheck(
      { at: 'x', kind: 'strength' },
      weak,
      { kn: 2, toward: { x: 1, y: 0 } },
      10,
      defaultRates,
    );
    expect([alone.points, alone.ok]).toEqual([2, 'yes']);
    const checks = checksOf(straightCase, { ...straightCase.anchors, main: weak, belay: weak });
    expect(checks.every(({ points }) => points === 1)).toBe(true);
    const third = { ...weak, attachments: 3 };
    const pointsOf = (anchor: typeof weak): number[] =>
      ['main anchor, hauling', 'belay anchor'].map((at) => {
        const kind = at === 'belay anchor' ? 'belay' : 'strength';
        return find(checksOf(straightCase, { ...straightCase.anchors, main: anchor, belay: anchor }), at, kind).points;
      });
    expect(pointsOf(third)).toEqual([1, 1]);
    expect(pointsOf({ ...weak, attachments: 4 })).toEqual([2, 2]);
  });
});

describe('anchors that are not computed, and missing figures', () => {
  const force = { kn: 3, toward: { x: 0, y: -1 } };
  const strength = (anchor: Anchor): ForceCheck =>
    strengthCheck({ at: 'main anchor', kind: 'strength' }, anchor, force, 10, defaultRates);

  it('a tree of 15 cm and a rock are for a judge on site; a thinner or unmeasured trunk is a no', () => {
    const tree = (trunkDiameterM: number | null): Anchor => ({ kind: 'tree', id: 't', trunkDiameterM });
    expect(strength(tree(0.15))).toMatchObject({ ok: 'judge on site', capacityKn: null, factor: null, required: null });
    expect(strength({ kind: 'rock', id: 'r' }).ok).toBe('judge on site');
    for (const trunk of [0.1499, Number.NaN, null]) {
      expect(strength(tree(trunk)).ok).toBe('no');
      expect(holdCheck('main anchor', tree(trunk), force, fairConditions, defaultRates).ok).toBe('no');
    }
  });

  it('an attachment of unstated strength meets nothing', () => {
    expect(strength({ ...engine('E1', 0), attachmentKn: null })).toMatchObject({ ok: 'no', factor: null });
    expect(strength({ ...engine('E1', 0), attachments: 0 }).ok).toBe('no');
  });

  it('on ice an apparatus is not an anchor', () => {
    const ice = { ...fairConditions, ice: true, wet: true };
    expect(tireFriction(ice, defaultRates)).toBeNull();
    expect(holdCheck('main anchor', engine('E1', 0), force, ice, defaultRates)).toMatchObject({
      capacityKn: 0,
      ok: 'no',
    });
  });

  it('wet is never better than dry, whatever the book says', () => {
    const odd = { ...defaultRates, tireFriction: 0.2, tireFrictionWet: 0.4 };
    expect(tireFriction({ ...fairConditions, wet: true }, odd)).toBe(0.2);
  });

  it('a factor that just reaches what is needed is met; a hair less is not', () => {
    const exact = { ...engine('E1', 0), attachments: 1, attachmentKn: 30 };
    expect(strength(exact).ok).toBe('yes');
    expect(strength({ ...exact, attachmentKn: 30 - 1e-6 }).ok).toBe('no');
  });
});

describe('what governs', () => {
  const check = (
    factor: number | null,
    required: number | null,
    ok: ForceCheck['ok'],
    kind: ForceCheck['kind'] = 'strength',
  ) =>
    ({
      at: `${factor} of ${required}`,
      kind,
      kn: 1,
      towardDeg: null,
      capacityKn: null,
      factor,
      required,
      ok,
      points: 1,
      rule: '',
    }) as const;

  it('is the least factor for what it needs', () => {
    const checks = [check(12, 10, 'yes'), check(5.5, 5, 'yes'), check(4, 3, 'yes', 'hold')];
    expect(governs(checks)).toMatchObject({ verdict: 'yes', leastHoldFactor: 4, check: { at: '5.5 of 5' } });
  });

  it('a no outweighs a judge on site, and an uncomputed no governs', () => {
    const checks = [check(12, 10, 'yes'), check(null, null, 'judge on site'), check(null, 10, 'no')];
    expect(governs(checks)).toMatchObject({ verdict: 'no', check: { ok: 'no' } });
    expect(governs(checks.slice(0, 2)).verdict).toBe('judge on site');
    expect(governs([])).toEqual({ check: null, verdict: 'yes', leastHoldFactor: null });
  });
});

describe('gear', () => {
  const ratings = { ropeKn: 40, pulleyKn: 36, deviceKn: 22 };
  const one = haulCases[2]!;
  const gear = (given: typeof ratings | { ropeKn: null; pulleyKn: null; deviceKn: null }) =>
    gearChecks('5:1', of(one), find(checksOf(one), 'change of direction, hauling', 'turn').kn, given, defaultRates);

  it('never refuses a layout, and says where a judge is wanted', () => {
    const checks = gear(ratings);
    expect(checks.map(({ at }) => at)).toEqual([
      'haul grab',
      'rope, held',
      'rope, hauling',
      'descent device',
      'pulley at the turn',
    ]);
    expect(checks.every(({ ok }) => ok !== 'no')).toBe(true);
    // Six people on a 5:1 could put 13.5 kN on a grab that slips at 7.
    expect(checks[0]).toMatchObject({ kind: 'grab', ok: 'judge on site' });
    expect(checks[0]!.kn).toBeCloseTo(13.5, 9);
    expect(checks[1]!.factor).toBeCloseTo((40 * 0.75) / 3.869, 2);
    expect(checks[4]!.factor).toBeCloseTo(36 / 8.159, 2);
  });

  it('has no good word for gear of unstated strength', () => {
    for (const check of gear({ ropeKn: null, pulleyKn: null, deviceKn: null }).slice(1)) {
      expect([check.factor, check.ok]).toEqual([null, 'judge on site']);
    }
  });
});
