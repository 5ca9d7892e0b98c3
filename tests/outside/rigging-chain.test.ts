import { describe, expect, it } from 'vitest';
import { defaultRates } from '../../src/book/index.ts';
import { actualAdvantage, hangingPull, haulTeam, heldPull } from '../../src/rigging/index.ts';
import { knToLbf, lbfToKn } from '../../src/units/index.ts';

const dragged = (kn: number) => ({ litterKn: kn, attendantsKn: 0, weightKn: kn });
const withFriction = (litterFriction: number) => ({ ...defaultRates, litterFriction });

describe('rope pull on a slope (derived)', () => {
  it.each([
    [20, 0.342],
    [30, 0.5],
    [35, 0.574],
    [40, 0.643],
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: the value as it is printed
    [45, 0.707],
    [60, 0.866],
  ])('held at %i°: %d of the weight (0.0005)', (deg, share) => {
    expect(Math.abs(heldPull(dragged(1), deg) - share)).toBeLessThanOrEqual(0.0005);
  });

  it.each([
    [30, 76.0],
    [35, 81.9],
    [45, 91.9],
    [60, 101.6],
  ])('raised at %i° with friction 0.3: %d %% of the weight (0.05)', (deg, percent) => {
    expect(Math.abs(100 * hangingPull(dragged(1), deg, withFriction(0.3)) - percent)).toBeLessThanOrEqual(0.05);
  });

  it('raised: largest √(1 + μ²) at tan θ = 1/μ, and never less beyond', () => {
    const peak = Math.sqrt(1 + 0.3 ** 2);
    const top = (Math.atan(1 / 0.3) * 180) / Math.PI;
    expect(hangingPull(dragged(1), top, withFriction(0.3))).toBeCloseTo(peak, 12);
    expect(hangingPull(dragged(1), 85, withFriction(0.3))).toBeCloseTo(peak, 12);
  });

  it.each([
    [25, 357.1],
    [30, 422.5],
    [35, 484.7],
    [40, 543.2],
    [45, 597.5],
    [60, 731.8],
  ])('a party of 845 lb without friction at %i°: %d lbf (0.05)', (deg, lbf) => {
    expect(Math.abs(heldPull(dragged(845), deg) - lbf)).toBeLessThanOrEqual(0.05);
  });
});

describe('one chain from load to hands (derived)', () => {
  const slope = hangingPull(dragged(lbfToKn(600)), 35, withFriction(0.4));
  const edge = slope / 0.9;
  const hand = edge / actualAdvantage('3:1', 0.9);
  const turned = edge / actualAdvantage('3:1', 0.9, 1);

  it('600 lbf at 35°, friction 0.4 → 540.74; roller 0.90 → 600.82; 3:1 → 221.71; one more turn 246.34 (0.005 lbf)', () => {
    [slope, edge, hand, turned].forEach((kn, i) => {
      expect(Math.abs(knToLbf(kn) - [540.74, 600.82, 221.71, 246.34][i]!)).toBeLessThanOrEqual(0.005);
    });
  });

  it('haulers at 50 lbf: 5 with or without that turn; at a sustained 30 lbf: 8 without, 9 with (read) [source: bassett-haul-systems]', () => {
    const settings = { ...defaultRates, haulerKn: lbfToKn(50), haulerSustainedKn: lbfToKn(30) };
    const team = (kn: number) => haulTeam('3:1', { walking: kn, hanging: kn }, settings);
    expect([team(hand).walking, team(turned).walking]).toEqual([5, 5]);
    expect([team(hand).sustained, team(turned).sustained]).toEqual([8, 9]);
    // The shipped rates are those figures rounded down.
    expect(defaultRates.haulerKn).toBeLessThanOrEqual(lbfToKn(50));
    expect(defaultRates.haulerSustainedKn).toBeLessThanOrEqual(lbfToKn(30));
  });

  it('rule of 18 (read): five on a 3:1 make 15, seven are over [source: rule-of-18]', () => {
    const team = (kn: number) => haulTeam('3:1', { walking: kn, hanging: kn }, defaultRates);
    expect(team(5 * 0.22).overRuleOf18).toBe(false);
    expect(team(6 * 0.22).overRuleOf18).toBe(false);
    expect(team(7 * 0.22).overRuleOf18).toBe(true);
  });

  it('hands at once stay under the slip of a haul grab, 7–9.5 kN (read) [source: schwartz-pulley-forces]', () => {
    expect(defaultRates.grabSlipKn).toBe(7);
    const hands = (name: '2:1' | '3:1' | '5:1' | '9:1') =>
      haulTeam(name, { walking: 1, hanging: 1 }, defaultRates).handsAtOnce;
    expect([hands('2:1'), hands('3:1'), hands('5:1'), hands('9:1')]).toEqual([7, 5, 3, 1]);
  });
});
