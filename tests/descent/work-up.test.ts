import { describe, expect, it } from 'vitest';
import { defaultAngleRule } from '../../src/book/index.ts';
import { type DescentInput, type Hill, noSurroundings, workUpDescent } from '../../src/descent/index.ts';
import { bankHill, formulaHill } from '../helpers/hill.ts';

const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180);
const edgeLine = Float64Array.from({ length: 302 }, (_, i) => (i % 2 ? (i - 1) / 2 - 75 : 0));
const input = (hill: Hill, more: Partial<DescentInput> = {}): DescentInput => ({
  hill,
  edge: { x: 0, y: 0 },
  outward: { x: 1, y: 0 },
  edgeLine,
  patient: null,
  around: noSurroundings,
  rule: defaultAngleRule,
  behindM: 8,
  ...more,
});

describe('descent of a site', () => {
  it('comes out whole on a plane bank', () => {
    const d = workUpDescent(input(bankHill(36, 40)))!;
    expect(d.line.why).toBe('ground levels');
    expect(d.line.azimuthDeg).toBeCloseTo(90, 6);
    expect(d.dropM).toBeCloseTo(d.line.lengthM * tan(36), 6);
    expect(d.groundLengthM).toBeCloseTo(d.line.lengthM / Math.cos((36 * Math.PI) / 180), 6);
    expect(d.meanDeg).toBeCloseTo(36, 6);
    expect(d.lipAngleDeg).toBeCloseTo(36, 6);
    expect(d.nearbyMaxDeg).toBeGreaterThanOrEqual(36 - 1e-9);
    expect(d.nearbyMaxDeg).toBeLessThan(36.3);
    expect(d.rope.lengthM).toBeCloseTo(Math.hypot(d.line.lengthM, d.dropM - 0.8), 6);
    expect(d.rope.contacts).toEqual([]);
    expect(d.steps).toEqual([]);
    expect(d.crossings).toEqual([]);
    expect(d.sightLostAtM).toBeNull();
    expect(d.whole).toBeNull();
    expect(Math.abs(d.angle!.governingDeg - 36)).toBeLessThan(0.3);
    expect(d.angle!.class).toBe('steep');
    expect(d.angle!.planAs).toBe('steep');
    expect(d.angle!.weight.ropePull).toBeCloseTo(Math.sin((d.angle!.governingDeg * Math.PI) / 180), 12);
    expect(d.behind.distanceM.length).toBe(16);
  });

  it('is the same twice', () => {
    const once = workUpDescent(input(bankHill(36, 40)));
    workUpDescent(input(bankHill(22, 90)));
    expect(JSON.stringify(workUpDescent(input(bankHill(36, 40))))).toBe(JSON.stringify(once));
  });

  it('is planned as high where a marked wall stands on it', () => {
    const wall = { source: 'mark', line: Float64Array.of(15, -5, 15, 5), heightM: 2 } as const;
    const d = workUpDescent(input(bankHill(22, 40), { around: { ...noSurroundings, drops: [wall] } }))!;
    expect(d.angle!.class).toBe('low');
    expect(d.angle!.planAs).toBe('high');
    expect(d.steps).toEqual([{ distanceM: 15, heightM: 2, source: 'mark' }]);
  });

  it('starts on the edge above a patient point and tells the side pull', () => {
    // The fall line runs 20° off the square to the road.
    const skew = formulaHill((x, y) => 100 - tan(33) * Math.max(0, x * Math.cos(0.35) + y * Math.sin(0.35)));
    const straight = workUpDescent(input(skew, { patient: { x: 30, y: 12 } }))!;
    expect(straight.line.why).toBe('patient point');
    expect(straight.line.end).toEqual({ x: 30, y: 12 });
    expect(straight.nearestEdgeTaken).toBe(false);
    expect(straight.sidePullDeg!).toBeLessThan(3);
    expect(straight.line.start.x).toBeCloseTo(0, 9);
    expect(Math.abs(straight.line.start.y - (12 - 30 * Math.tan(0.35)))).toBeLessThan(0.6);
  });

  it('takes the nearest edge where the up-slope line meets none', () => {
    const short = Float64Array.of(0, -2, 0, 2);
    const d = workUpDescent(input(bankHill(33, 60), { patient: { x: 20, y: 20 }, edgeLine: short }))!;
    expect(d.nearestEdgeTaken).toBe(true);
    expect(d.line.start).toEqual({ x: 0, y: 2 });
    expect(d.sidePullDeg!).toBeGreaterThan(15);
  });

  it('ends at missing data on the way to the patient point', () => {
    const hole = formulaHill((x) => (x > 20.2 && x < 24 ? Number.NaN : 100 - tan(33) * Math.max(0, x)));
    const d = workUpDescent(input(hole, { patient: { x: 40, y: 0 } }))!;
    expect(d.line.why).toBe('no data');
    expect(d.line.lengthM).toBeCloseTo(20, 9);
    expect([...d.profile.elevationM].every(Number.isFinite)).toBe(true);
  });

  it('tells a bending fall line up to the bend and as a whole', () => {
    const r = 60;
    const spiral = formulaHill((x, y) => {
      const angle = Math.atan2(x, r - y);
      return 200 - tan(33) * r * Math.max(0, angle) + 0.2 * (Math.hypot(x, y - r) - r) ** 2;
    });
    const d = workUpDescent(input(spiral))!;
    expect(d.line.why).toBe('fall line bends');
    expect(d.whole!.horizontalM).toBeGreaterThan(1.5 * d.line.lengthM);
    expect(d.whole!.dropM).toBeGreaterThan(d.dropM);
    expect(Math.abs(d.whole!.angle!.governingDeg - 33)).toBeLessThan(1);
  });

  it('has no descent on flat ground or without data at the edge', () => {
    expect(workUpDescent(input(bankHill(2, 10)))).toBeNull();
    expect(workUpDescent(input(formulaHill(() => Number.NaN)))).toBeNull();
  });

  it('has one line over a short slope and no angle under 2 m', () => {
    const short = workUpDescent(input(bankHill(40, 4)))!;
    expect(short.angle!.shortPosts).not.toBeNull();
    expect(Math.abs(short.angle!.governingDeg - 40)).toBeLessThan(1);
    expect(short.angle!.rangeDeg[1] - short.angle!.rangeDeg[0]).toBeGreaterThan(1.5);
    const tiny = workUpDescent(input(bankHill(40, 3), { patient: { x: 1.5, y: 0 } }))!;
    expect(tiny.angle).toBeNull();
  });

  it('never tells or plans low in data that only screen', () => {
    const coarse = bankHill(12, 200, { cellM: 10, screeningOnly: true, sigmaM: null });
    const d = workUpDescent(input(coarse))!;
    expect(d.angle!.class).not.toBe('low');
    expect(d.angle!.planAs).not.toBe('low');
    expect(d.angle!.windowM).toBe(30);
    expect(d.angle!.errorUnknown).toBe(true);
  });

  it('does not lose the last metre of a slope that is steepest at its foot', () => {
    // 18° down to 7 m, then 44° to the end at 11.9 m: the steepest 5 m are the last.
    const height = (x: number): number => -tan(18) * Math.min(7, Math.max(0, x)) - tan(44) * Math.max(0, x - 7);
    for (const end of [11.6, 11.9, 12.2, 12.4]) {
      const hill = formulaHill((x) => (x > end + 2 ? Number.NaN : height(Math.min(x, end))));
      const d = workUpDescent(input(hill, { patient: { x: end, y: 0 } }))!;
      const steepest = Math.max(...d.profile.angleDeg);
      expect(d.angle!.governingDeg).toBeGreaterThan(steepest - 1.5);
    }
  });

  it('does not need ground past its end', () => {
    const cut = formulaHill((x) => (x > 11.9 ? Number.NaN : -tan(33) * Math.max(0, x)));
    const d = workUpDescent(input(cut, { patient: { x: 11.9, y: 0 } }))!;
    expect(Math.abs(d.angle!.governingDeg - 33)).toBeLessThan(0.5);
  });

  it('does not get gentler when ground below goes missing', () => {
    // The steep piece is above the hole: cutting the slope off must not change what is planned there.
    const slope = (x: number): number => 100 - tan(47) * Math.min(12, Math.max(0, x)) - tan(25) * Math.max(0, x - 12);
    const whole = workUpDescent(input(formulaHill((x) => slope(x), {})))!;
    const cut = workUpDescent(input(formulaHill((x) => (x > 30 ? Number.NaN : slope(x)))))!;
    expect(whole.angle!.planAs).toBe('high');
    expect(cut.angle!.planAs).toBe('high');
    expect(cut.line.why).toBe('no data');
  });
});
