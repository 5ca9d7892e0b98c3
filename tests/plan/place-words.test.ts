import { describe, expect, test } from 'vitest';
import { landingZoneShort } from '../../src/book/index.ts';
import { placeSizeWords, placeWords } from '../../src/plan/index.ts';

const zone = {
  kind: 'landing zone',
  name: 'Quarry floor',
  at: { lon: -128, lat: 44.009 },
  vehicles: null,
  lengthM: 45.72,
  widthM: 33.528,
  hazards: 'wires on the east side',
  on: '2025-03-20',
} as const;

// faa-aim-10-2-3 by page 07: 100 ft by 100 ft by day, 125 ft by 125 ft by night.
describe('a landing zone', () => {
  test.each([
    [99.9, 200, 'day'],
    [100, 200, 'night'],
    [200, 124.9, 'night'],
    [125, 125, 'never'],
  ] as const)('%f × %f ft is too small: %s', (lengthFt, widthFt, when) => {
    expect(landingZoneShort({ lengthM: lengthFt * 0.3048, widthM: widthFt * 0.3048 })).toBe(when);
  });

  test('of which a side is not known is neither large enough nor too small', () => {
    expect(landingZoneShort({ lengthM: null, widthM: 60 })).toBeNull();
    expect(placeSizeWords({ ...zone, widthM: null }, 'us')).toBe('size not taken');
  });

  test('is told with where it lies, its size and what is wrong with it', () => {
    // A thousandth of a degree of latitude is 111.1 m at 44° (WGS 84): 0.009° are 1,000 m, 0.6 mi.
    const words = placeWords({ lon: -128, lat: 44 }, zone, 'us').replaceAll('\u00a0', ' ');
    expect(words).toMatch(
      /^Landing zone Quarry floor, 0\.6 mi north in a straight line, 150 × 110 ft, too small by night \(125 ft each way asked for\), hazards: wires on the east side, seen 2025-03-20: /,
    );
    expect(placeSizeWords({ ...zone, widthM: 20 }, 'metric').replaceAll('\u00a0', ' ')).toBe(
      '45 × 20 m, too small (31 m each way asked for)',
    );
  });
});
