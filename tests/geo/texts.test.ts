import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  formatDecimalDegrees,
  formatDegreesMinutes,
  formatUsng,
  geodesicM,
  type LonLat,
  parsePosition,
  parseUsng,
} from '../../src/geo/index.ts';

const anywhere = fc.record({
  lon: fc.double({ min: -180, max: 180, noNaN: true }),
  lat: fc.double({ min: -80, max: 83.99, noNaN: true }),
});
const read = (text: string): LonLat => {
  const found = parsePosition(text);
  if (!found.ok) throw found.error;
  return found.value.position;
};
describe('texts of a position', () => {
  it('come back within half a digit', () => {
    fc.assert(
      fc.property(anywhere, (position) => {
        expect(geodesicM(read(formatDecimalDegrees(position)), position)).toBeLessThan(0.8);
        expect(geodesicM(read(formatDegreesMinutes(position)), position)).toBeLessThan(1.4);
      }),
      { seed: 5 },
    );
  });

  it('roll 59.9996 minutes over to the next degree', () => {
    expect(formatDegreesMinutes({ lat: 44 + 59.9996 / 60, lon: -127 - 59.9994 / 60 })).toBe(
      '45° 0.000′ N, 127° 59.999′ W',
    );
  });

  it('write no minus before nothing', () => {
    expect(formatDecimalDegrees({ lat: -1e-9, lon: 12 })).toBe('0.00000, 12.00000');
    expect(formatDegreesMinutes({ lat: -1e-9, lon: -1e-9 })).toBe('0° 0.000′ N, 0° 0.000′ E');
  });
});

describe('US National Grid', () => {
  it('names the square a position lies in, at every size', () => {
    fc.assert(
      fc.property(anywhere, fc.constantFrom(1, 2, 3, 4, 5), (position, digits) => {
        const text = formatUsng(position, digits)!;
        const { position: middle, withinM } = parseUsng(text)!;
        expect(withinM).toBe(0.5 * 10 ** (5 - digits));
        // The grid's scale is 0.9996 in the middle of a zone; half a metre is the finest square itself.
        expect(geodesicM(middle, position)).toBeLessThan(withinM * Math.SQRT2 * 1.0005 + 0.75);
      }),
      { seed: 7, numRuns: 400 },
    );
  });

  it('cuts digits off and never rounds', () => {
    const fine = formatUsng({ lat: 38.8895, lon: -77.0352 })!;
    expect(fine).toBe('18S UJ 23486 06483');
    expect(formatUsng({ lat: 38.8895, lon: -77.0352 }, 3)).toBe('18S UJ 234 064');
    expect(formatUsng({ lat: 38.8895, lon: -77.0352 }, 1)).toBe('18S UJ 2 0');
  });

  it('has nothing to say at the poles', () => {
    expect(formatUsng({ lat: 84.01, lon: 0 })).toBeNull();
    expect(formatUsng({ lat: -80.01, lon: 0 })).toBeNull();
  });

  it('knows squares that a zone does not have', () => {
    expect(parseUsng('18S UJ 23486 06483')).not.toBeNull();
    expect(parseUsng('18S AJ 23486 06483')).toBeNull();
    expect(parseUsng('18C UJ 23486 06483')).toBeNull();
    expect(parseUsng('61S UJ 23486 06483')).toBeNull();
    expect(parseUsng('18I UJ 23486 06483')).toBeNull();
  });
});
