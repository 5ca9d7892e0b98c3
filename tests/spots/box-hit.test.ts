import fc from 'fast-check';
import { expect, test } from 'vitest';
import { boxOf, pathHitsBox, segmentHitsBox } from '../../src/spots/box-hit.ts';

const metres = fc.double({ min: -30, max: 30, noNaN: true });

test('a path enters a box where one of its segments does, a lone point where it lies in it', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(metres, metres), { minLength: 1, maxLength: 12 }),
      fc.record({ x: metres, y: metres, headingDeg: fc.double({ min: 0, max: 360, noNaN: true }) }),
      fc.record({
        lengthM: fc.double({ min: 1, max: 12, noNaN: true }),
        growM: fc.double({ min: 0, max: 3, noNaN: true }),
      }),
      (points, at, { lengthM, growM }) => {
        const box = boxOf({ ...at, lengthM, widthM: 2.5 });
        const ends = points.length === 1 ? points : points.slice(1);
        const hit = ends.some(([x, y], i) => segmentHitsBox(box, growM, points[i]![0], points[i]![1], x, y));
        expect(pathHitsBox(new Float64Array(points.flat()), box, growM)).toBe(hit);
      },
    ),
    { numRuns: 2000 },
  );
});
