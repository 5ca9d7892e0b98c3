import { describe, expect, it } from 'vitest';
import { defaultRates } from '../../src/book/index.ts';
import { capstanFactor, contactsFactor } from '../../src/rigging/index.ts';
import { toRadians } from '../../src/units/index.ts';

// Friction of rope on edges as measured (read) [source: delaney-2022]; e^(μβ) as applied to rescue ropes [source: attaway-1999].
const measured = {
  aluminium: [0.14, 0.21],
  galvanised: [0.19, 0.25],
  steelBar: [0.24, 0.24],
  timber: [0.36, 0.37],
  concrete: [0.44, 0.44],
};

describe('friction over an edge', () => {
  it('90° over concrete multiplies a raise by 1.996', () => {
    expect(capstanFactor(0.44, Math.PI / 2)).toBeCloseTo(1.996, 3);
  });

  it('35° of wrap at 0.4: 1.277 (derived)', () => {
    expect(capstanFactor(0.4, toRadians(35))).toBeCloseTo(1.277, 3);
  });

  it('an edge without named protection takes the roughest surface measured', () => {
    const roughest = Math.max(...Object.values(measured).flat());
    expect(defaultRates.edgeFriction).toBe(roughest);
    expect(contactsFactor([{ bendDeg: 90, friction: null }], defaultRates)).toBeCloseTo(1.996, 3);
    expect(contactsFactor([{ bendDeg: 90, friction: 0.24 }], defaultRates)).toBeCloseTo(
      Math.exp(0.24 * (Math.PI / 2)),
      12,
    );
  });

  it('bends multiply: two of 30° rub as one of 60°', () => {
    const bend = (bendDeg: number) => ({ bendDeg, friction: null });
    expect(contactsFactor([bend(30), bend(30)], defaultRates)).toBeCloseTo(
      contactsFactor([bend(60)], defaultRates),
      12,
    );
  });
});
