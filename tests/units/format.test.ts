import { describe, expect, it } from 'vitest';
import {
  azimuthGap,
  compassWord,
  formatAngleRange,
  formatLength,
  formatPercent,
  normaliseAzimuth,
  seededRandom,
  thousands,
} from '../../src/units/index.ts';

describe('texts of quantities', () => {
  it('rounds a need up and a supply down', () => {
    expect(formatLength(50.9, 'us', 'up')).toBe('167 ft');
    expect(formatLength(50.9, 'us', 'down')).toBe('166 ft');
    expect(formatLength(50.9, 'metric')).toBe('51 m');
    expect(formatLength(2, 'us')).toBe('6.6 ft');
    expect(formatLength(-0.001, 'metric')).toBe('0 m');
    expect(formatLength(1207.3, 'us')).toBe('3,961 ft');
    expect(formatLength(999.4, 'metric')).toBe('999 m');
  });

  it('does not round a whole number of feet up for a last bit', () => {
    expect(formatLength(0.3048 * 60, 'us', 'up')).toBe('60 ft');
    expect(formatLength(0.1 + 0.2, 'metric', 'up')).toBe('0.3 m');
  });

  it('sets thousands apart as the platform’s own formatter does', () => {
    for (const value of [0, -0, 7, 999, 1000, -1234, 12_345.5, 1_234_567.8914, -0.0004]) {
      expect(thousands(value)).toBe(value.toLocaleString('en-US').replace(/^-0$/, '0'));
    }
  });

  it('rounds a range outward', () => {
    expect(formatAngleRange(33.4, 35.1)).toBe('33 to 36');
    expect(formatAngleRange(33, 36)).toBe('33 to 36');
  });

  it('never says 0 or 100 % of what is possible or not certain', () => {
    expect([0, 0.0001, 0.5, 0.9999, 1].map(formatPercent)).toEqual([
      'under 1 %',
      'under 1 %',
      '50 %',
      'over 99 %',
      'over 99 %',
    ]);
  });

  it('names eight winds', () => {
    expect([0, 22, 23, 180, 337, 338, -45].map(compassWord)).toEqual([
      'north',
      'north',
      'northeast',
      'south',
      'northwest',
      'north',
      'northwest',
    ]);
  });

  it('measures the gap between azimuths across north', () => {
    expect(normaliseAzimuth(-1)).toBe(359);
    expect(azimuthGap(350, 10)).toBe(20);
    expect(azimuthGap(0, 180)).toBe(180);
  });
});

describe('seededRandom', () => {
  it('repeats for a seed, differs between seeds, and has the moments it states', () => {
    const a = seededRandom(7);
    const b = seededRandom(7);
    expect([a.next(), a.next()]).toEqual([b.next(), b.next()]);
    expect(seededRandom(8).next()).not.toBe(seededRandom(7).next());
    const n = 40_000;
    let mean = 0;
    let square = 0;
    for (let i = 0; i < n; i++) {
      const z = a.normal();
      mean += z / n;
      square += (z * z) / n;
    }
    // Standard errors at n = 40 000: 0.005 of the mean, 0.007 of the variance; five of each.
    expect(Math.abs(mean)).toBeLessThan(0.025);
    expect(Math.abs(square - 1)).toBeLessThan(0.036);
  });
});
