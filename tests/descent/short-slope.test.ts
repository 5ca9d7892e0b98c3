import { describe, expect, it } from 'vitest';
import { normalAbove } from '../../src/descent/estimate/normal-share.ts';
import { shortSlope, worstSlopeSd } from '../../src/descent/index.ts';
import { seededRandom } from '../../src/units/index.ts';

const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180);
const line = (angleDeg: number, lengthM: number) => ({
  heightM: Float64Array.from({ length: 4 * lengthM + 1 }, (_, i) => 50 - (tan(angleDeg) * i) / 4),
  stepM: 0.25,
  cellM: 1,
});

describe('short slope', () => {
  it('reads a line exactly and is wider the shorter it is', () => {
    let wider = 0;
    for (const length of [5, 4, 3, 2]) {
      const told = shortSlope(line(37, length), 0.05);
      expect(told.medianDeg).toBeCloseTo(37, 9);
      expect(told.sigmaDeg).toBeGreaterThan(wider);
      wider = told.sigmaDeg;
    }
  });

  it('does not take the smeared ends for a gentler slope', () => {
    // a 4 m bank of 40° whose first and last half metre are mixed with level ground
    const bank = line(40, 4);
    for (const [i, level] of [
      [0, bank.heightM[2]],
      [1, bank.heightM[2]],
      [15, bank.heightM[14]],
      [16, bank.heightM[14]],
    ] as const) {
      bank.heightM[i] = (bank.heightM[i] + level) / 2;
    }
    expect(shortSlope(bank, 0.05).medianDeg).toBeCloseTo(40, 9);
  });

  it('has about 1.0° of deviation over 5 m at 35° and 0.10 m', () => {
    // One window, correlation about the worst for it, as a trial of the estimator drew it [source: derived].
    const sd = worstSlopeSd(5, 0.1, 1) * Math.cos((35 * Math.PI) / 180) ** 2 * (180 / Math.PI);
    expect(Math.abs(sd - 1.0)).toBeLessThan(0.1);
  });

  it('has the deviation that simulated errors give', () => {
    const random = seededRandom(7);
    // chains of exp(−1/c) between posts; the worst of the same lengths, 20,000 draws each
    let worst = 0;
    for (const c of [0.5, 1, 2, 4, 8]) {
      const keep = Math.exp(-1 / c);
      let sum = 0;
      const draws = 20_000;
      for (let i = 0; i < draws; i++) {
        let e = random.normal();
        let slope = 0;
        for (let k = 0; k <= 3; k++) {
          slope += ((k - 1.5) / 5) * e;
          e = keep * e + Math.sqrt(1 - keep * keep) * random.normal();
        }
        sum += slope * slope;
      }
      worst = Math.max(worst, Math.sqrt(sum / draws));
    }
    expect(Math.abs(worstSlopeSd(3, 1, 1) / worst - 1)).toBeLessThan(0.03);
  });

  it('gives chances in tan, one half at its own angle', () => {
    const told = shortSlope(line(37, 4), 0.1);
    expect(told.chanceFrom(37)).toBeCloseTo(0.5, 6);
    expect(told.chanceFrom(told.rangeDeg[1])).toBeCloseTo(0.05, 5);
    expect(told.chanceFrom(told.rangeDeg[0])).toBeCloseTo(0.95, 5);
    expect(told.chanceFrom(90)).toBe(0);
  });

  it('knows the normal distribution', () => {
    // Recalled [source: abramowitz-stegun, table 26.1].
    expect(normalAbove(0)).toBeCloseTo(0.5, 7);
    expect(normalAbove(1)).toBeCloseTo(0.1586553, 6);
    expect(normalAbove(-1.959964)).toBeCloseTo(0.975, 6);
  });
});
