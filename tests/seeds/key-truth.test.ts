import { describe, expect, it } from 'vitest';
import type { FineGround } from '../../seeds/ground/tiles.ts';
import { trueAngle } from '../../seeds/key/angle.ts';
import { trueEdge } from '../../seeds/key/edge.ts';
import { fallLine, straightTo } from '../../seeds/key/fall-line.ts';
import { besideBench } from '../../seeds/key/side-kind.ts';
import { toDegrees } from '../../src/units/index.ts';

/** Ground that any function gives, on 0.25 m cells over 128 m, without roads' tiles. */
function groundOf(height: (x: number, y: number) => number): FineGround {
  const step = 0.25;
  const side = 128;
  const n = side / step;
  const data = new Float64Array(n * n);
  for (let r = 0; r < n; r++) {
    for (let c = 0; c < n; c++) data[r * n + c] = height((c + 0.5) * step, side - (r + 0.5) * step);
  }
  const natural = { width: n, height: n, data, x0: step / 2, y0: side - step / 2, stepX: step, stepY: step };
  return { box: { west: 0, south: 0, east: side, north: side }, columns: 1, rows: 1, tiles: [null], natural };
}

const slope = (degrees: number) => Math.tan((degrees * Math.PI) / 180);
/** A bench with 2 % crossfall up to x = `edge`, then a slope. */
const benchAndSlope = (edge: number, degrees: number) => (x: number) =>
  x < edge ? 100 - 0.02 * (x - edge) : 100 - slope(degrees) * (x - edge);
const eastward = { x: 40, y: 64, dx: 1, dy: 0 };
const noWater = () => false;

describe('the true edge', () => {
  it.each([18, 25, 35, 50])('lies where bench and slope of %i° meet, found from a metre off', (degrees) => {
    const ground = groundOf(benchAndSlope(44.37, degrees));
    for (const start of [3.4, 4.37, 5.3]) {
      expect(trueEdge(ground, eastward, start, -3, 0)?.offsetM).toBeCloseTo(4.37, 1.7);
    }
  });

  it('is not moved by a berm of 0.4 m inside it', () => {
    const base = benchAndSlope(44.37, 35);
    const inside = (x: number) => 44.37 - x;
    const berm = (x: number) =>
      inside(x) > 0 && inside(x) < 1.3 ? 0.2 * (1 - Math.cos((2 * Math.PI * inside(x)) / 1.3)) : 0;
    const ground = groundOf((x) => base(x) + berm(x));
    expect(trueEdge(ground, eastward, 4.37, -3, 1.35)?.offsetM).toBeCloseTo(4.37, 1.5);
  });

  it('is none on an even plane', () => {
    expect(
      trueEdge(
        groundOf((x) => 100 - 0.05 * x),
        eastward,
        4,
        -3,
        0,
      ),
    ).toBeNull();
  });
});

describe('what lies beside a bench', () => {
  const kindOf = (height: (x: number) => number) => besideBench(groundOf(height), eastward, 4.5).kind;
  it('is a drop from 25 % and 2 m within 20 m, or 40 % and 1.2 m', () => {
    const bank = (percent: number, fall: number) => (x: number) =>
      100 - Math.min(fall, (Math.max(0, x - 44.5) * percent) / 100);
    expect(kindOf(bank(26, 2.1))).toBe('drop');
    expect(kindOf(bank(24, 9))).toBe('bank');
    expect(kindOf(bank(30, 1.9))).toBe('bank');
    expect(kindOf(bank(42, 1.3))).toBe('drop');
    expect(kindOf(bank(42, 1.1))).toBe('bank');
    expect(kindOf(bank(8, 9))).toBe('flat');
    expect(kindOf(bank(-40, -9))).toBe('flat');
    expect(kindOf((x) => 100 + 0.7 * Math.max(0, x - 44.5))).toBe('cut');
  });
});

describe('the true fall line and angles', () => {
  // A cone about (64, 64): down the slope is away from the middle.
  const cone = groundOf((x, y) => 200 - slope(33) * Math.hypot(x - 64, y - 64));

  it('runs straight away from the top of a cone', () => {
    const line = fallLine(cone, cone.natural, { x: 64 + 6, y: 64 + 8 }, 0.4, noWater);
    const last = line.x.length - 1;
    expect(Math.atan2(line.y[last] - 64, line.x[last] - 64)).toBeCloseTo(Math.atan2(8, 6), 1.5);
    expect(line.why).toBe('no data');
    expect(straightTo(line)).toBe(last);
  });

  it('ends where 15 m fall by under 10 degrees, carrying on over a track', () => {
    const foot = 90;
    const profile = (x: number) => {
      const onTrack = Math.min(3, Math.max(0, x - 60));
      return 100 - slope(30) * (Math.min(x, foot) - 40 - onTrack) - slope(3) * (onTrack + Math.max(0, x - foot));
    };
    const ground = groundOf(profile);
    const line = fallLine(ground, ground.natural, { x: 40, y: 64 }, 0, noWater);
    expect(line.why).toBe('ground levels');
    expect(line.x.at(-1)).toBeGreaterThan(86);
    expect(line.x.at(-1)).toBeLessThan(91);
  });

  it('stops at water', () => {
    const line = fallLine(cone, cone.natural, { x: 70, y: 64 }, 0, (x) => x > 90);
    expect(line.why).toBe('water');
    expect(line.x.at(-1)).toBeCloseTo(90.5, 0);
  });

  it('takes the steepest 5 m window', () => {
    const ground = groundOf(
      (x) => 100 - slope(25) * (x - 40) - (slope(41) - slope(25)) * Math.min(7, Math.max(0, x - 60)),
    );
    const angle = trueAngle(ground, { x: 40, y: 64, dx: 1, dy: 0 }, 50);
    expect(toDegrees(Math.atan(angle?.governing ?? 0))).toBeCloseTo(41, 1);
    expect(angle?.fromM).toBeGreaterThan(19.5);
    expect(angle?.fromM).toBeLessThan(22.5);
    expect(angle?.steps).toEqual([]);
  });

  it('finds a wall of 2.6 m and none on a plane of any slope', () => {
    const wall = groundOf((x) => 100 - slope(28) * (x - 40) - 2.6 * Math.min(1, Math.max(0, (x - 55) / 0.5)));
    const [step, ...rest] = trueAngle(wall, eastward, 40)?.steps ?? [];
    expect(rest).toEqual([]);
    // Any run of 2 m that holds the whole wall, from 15 to 15.5 m, will do.
    expect(Math.abs(step.distanceM - 15.25)).toBeLessThanOrEqual(0.75);
    expect(step.heightM).toBeGreaterThan(2.2);
    for (const degrees of [20, 45, 65, 75]) {
      expect(
        trueAngle(
          groundOf((x) => 100 - slope(degrees) * x),
          eastward,
          40,
        )?.steps,
      ).toEqual([]);
    }
  });

  it('says nothing of a descent under 2 m', () => {
    expect(trueAngle(cone, { x: 70, y: 64, dx: 1, dy: 0 }, 1.9)).toBeNull();
  });
});
