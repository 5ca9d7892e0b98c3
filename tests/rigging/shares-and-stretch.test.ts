import { describe, expect, it } from 'vitest';
import { defaultRates } from '../../src/book/index.ts';
import { attendantShare, contactsFactor, edgeBend, fairConditions, haul } from '../../src/rigging/index.ts';
import { haulCases } from '../helpers/haul-cases.ts';

describe('share of the attendants on the rope (common practice, no source)', () => {
  const share = (deg: number, other = {}): number => attendantShare(deg, { ...fairConditions, ...other }, defaultRates);

  it('is a half up to 30°, rises evenly to all of it at 45°', () => {
    expect([0, 30, 37.5, 45, 70].map((deg) => share(deg))).toEqual([0.5, 0.5, 0.75, 1, 1]);
  });

  it('is a quarter more when wet, never over all; all of it on ice, snow or loose ground', () => {
    expect([20, 37.5, 44].map((deg) => share(deg, { wet: true }))).toEqual([0.75, 1, 1]);
    expect([share(10, { ice: true }), share(10, { looseGround: true })]).toEqual([1, 1]);
    expect([share(10, { night: true }), share(10, { wind: true })]).toEqual([0.5, 0.5]);
  });
});

describe('rope that stretches', () => {
  it('is 3 % of what lies between litter and haul grab: below the edge and, turned, up to the turn', () => {
    const stretch = (i: number): number => {
      const one = haulCases[i]!;
      return haul(one.ground, one.run, one.conditions, defaultRates).stretchM;
    };
    expect(stretch(0)).toBeCloseTo(0.03 * (25 + 1.5 + 3.25), 12);
    expect(stretch(4)).toBeCloseTo(0.03 * (20 + 1.5), 12);
  });

  it('can cost a pull: 34 m in throws of 17.25 m gained, then with the stretch', () => {
    const one = haulCases[1]!;
    const ground = { ...one.ground, ropeLineM: 33.7, groundLengthM: 33.7 };
    const count = (ropeStretch: number): number =>
      haul(ground, one.run, one.conditions, { ...defaultRates, ropeStretch }).pulls;
    expect([count(0), count(0.03)]).toEqual([2, 3]);
  });
});

describe('bends', () => {
  it('small ones rub too, and a rope that bends away rubs nowhere', () => {
    expect(contactsFactor([{ bendDeg: 2, friction: 0.44 }], defaultRates)).toBeCloseTo(
      Math.exp((0.44 * 2 * Math.PI) / 180),
      12,
    );
    expect(contactsFactor([{ bendDeg: -20, friction: 0.44 }], defaultRates)).toBe(1);
    expect(edgeBend(5, 0.6, 2.75)).toBe(0);
  });
});
