import { describe, expect, it } from 'vitest';
import { resultantKn, turnForce } from '../../src/rigging/index.ts';
import { lbfToKn, toRadians } from '../../src/units/index.ts';

// Multiples of tension by the interior angle between the legs, as printed in rigging-block tables (read) [source: rigging-block-tables].
const printedMultiples = [
  [0, 2.0],
  [30, 1.93],
  [45, 1.84],
  [60, 1.73],
  [90, 1.41],
  [100, 1.29],
  [120, 1.0],
  [135, 0.76],
  [150, 0.52],
  [180, 0.0],
] as const;

// 2 cos(α/2) (derived).
const exactMultiples = [
  [30, 1.9319],
  [45, 1.8478],
  [60, 1.7321],
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: the value as it is printed
  [90, 1.4142],
  [100, 1.2856],
  [120, 1.0],
  [135, 0.7654],
  [150, 0.5176],
] as const;

const legs = (deg: number) => [
  { x: 1, y: 0 },
  { x: Math.cos(toRadians(deg)), y: Math.sin(toRadians(deg)) },
];

describe('change of direction against rigging-block tables', () => {
  it.each(printedMultiples)(
    '%i° between the legs: %d × tension, printed (0.01, values are truncated or rounded)',
    (deg, multiple) => {
      expect(Math.abs(resultantKn(1, 1, toRadians(deg)) - multiple)).toBeLessThanOrEqual(0.01);
      const [a, b] = legs(deg);
      expect(Math.abs(turnForce(1, a!, 1, b!).kn - multiple)).toBeLessThanOrEqual(0.01);
    },
  );

  it.each(exactMultiples)('%i°: %d, derived (0.00005)', (deg, multiple) => {
    expect(Math.abs(resultantKn(1, 1, toRadians(deg)) - multiple)).toBeLessThanOrEqual(0.00005);
  });

  it('worked examples, read: 1,000 lb at 50° 1,810 lb; at 135° 760 lb (10 lb); 150 kg at 100° 193.4 kg (1 kg)', () => {
    expect(Math.abs(resultantKn(1000, 1000, toRadians(50)) - 1810)).toBeLessThanOrEqual(10);
    expect(Math.abs(resultantKn(1000, 1000, toRadians(135)) - 760)).toBeLessThanOrEqual(10);
    expect(Math.abs(resultantKn(150, 150, toRadians(100)) - 193.4)).toBeLessThanOrEqual(1);
  });

  it('main line at the turn, derived: 600.82 lbf, η 0.90, legs at 90° → far leg 667.6, resultant 898 lbf, 3.99 kN', () => {
    const near = lbfToKn(600.82);
    const far = near / 0.9;
    expect(far / lbfToKn(1)).toBeCloseTo(667.6, 1);
    const [a, b] = legs(90);
    const force = turnForce(near, a!, far, b!);
    expect(force.kn / lbfToKn(1)).toBeCloseTo(898, 0);
    expect(force.kn).toBeCloseTo(3.995, 3);
    // Pulls more along the far leg: tan = 1/0.9 from the near one.
    expect(Math.atan2(force.toward.y, force.toward.x)).toBeCloseTo(Math.atan2(1, 0.9), 12);
  });
});
