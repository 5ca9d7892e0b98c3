import { describe, expect, test } from 'vitest';
import { geodesicM } from '../../../src/geo/index.ts';
import type { Study } from '../../../src/study/index.ts';
import { edgeLine, shoulderRing } from '../../../src/ui/roadside/edge-shapes.ts';
import { inkedSteps, missed, NOT_REACHED, nextStep, notesOf, steps } from '../../../src/ui/roadside/steps.ts';

describe('the tape', () => {
  test('inks without a gap, and goes on where something is missing', () => {
    expect(inkedSteps({})).toBe(0);
    expect(inkedSteps({ edge: '21 ft', barrier: 'none' })).toBe(1);
    expect(nextStep('edge', { edge: '21 ft' })).toBe('angle');
    expect(nextStep('up', { edge: 'a', angle: 'b', up: 'c' })).toBe('barrier');
    const all = Object.fromEntries(steps.slice(0, 7).map(({ name }) => [name, 'x']));
    expect(nextStep('radio', all)).toBe('sign');
    expect(nextStep('up', all)).toBe('sign');
  });

  test('what was not reached is told as such, and so is what nobody looked at', () => {
    const answers = { edge: NOT_REACHED, angle: '33°' };
    expect(missed(answers)).toEqual(['edge to anchor', 'barrier', 'firm ground', 'two anchors', 'radio', 'look up']);
    expect(notesOf(answers)).toContain('Edge to anchor: not reached.\nSteepest stretch: 33°.\nBarrier: not looked at.');
  });
});

describe('shapes along the edge', () => {
  // A road drawn due north: its right side is east.
  const station = (metres: number, right: number | null) => ({
    stationM: 100 + metres,
    lon: -128,
    lat: 44 + metres / 111_111,
    azimuthDeg: 0,
    leftEdgeOffsetM: -4,
    rightEdgeOffsetM: right,
    lineShiftM: 0.5,
  });
  const study = (side: 'left' | 'right') =>
    ({
      site: { side, road: { stationM: 100 } },
      bench: { stations: [station(-30, 5), station(-10, 5), station(0, 6), station(10, null), station(12, 5)] },
    }) as unknown as Study;

  test('a barrier follows the edge of the site’s side, within its reach, where the edge was found', () => {
    const right = edgeLine(study('right'), 15);
    expect(right).toHaveLength(3);
    const middle = { lon: right[1]![0], lat: right[1]![1] };
    expect(middle.lon).toBeGreaterThan(-128);
    expect(geodesicM(middle, { lon: -128, lat: 44 })).toBeCloseTo(6, 2);
    const left = edgeLine(study('left'), 15);
    expect(left).toHaveLength(4);
    expect(left[0]![0]).toBeLessThan(-128);
  });

  test('ground is a closed ring from the middle of the road to the edge', () => {
    const ring = shoulderRing(study('right'), 15)!;
    expect(ring[0]).toEqual(ring.at(-1));
    const inner = { lon: ring[3]![0], lat: ring[3]![1] };
    expect(geodesicM(inner, { lon: -128, lat: inner.lat })).toBeCloseTo(0.5, 2);
    expect(shoulderRing({ ...study('right'), bench: null }, 15)).toBeNull();
  });
});
