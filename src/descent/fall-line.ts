import type { PointM } from '../geo/index.ts';
import type { Hill } from './hill.ts';
import { heightAtPoint } from './hill.ts';
import { bankFoot, LEVEL, LOW_BANK_M, levelsAt } from './level-ground.ts';
import { presence } from './presence.ts';
import { compassAt, stepOn } from './straight-on.ts';
import type { Surroundings } from './surroundings.ts';
import { valleyHeading } from './valley-heading.ts';

export type FallLineEnd = 'ground levels' | 'road' | 'water' | 'no data' | 'limit';

/** A way down: points every `stepM` of horizontal length, local metres, bilinear heights. */
export interface FallLine {
  readonly stepM: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly heightM: Float64Array;
  readonly why: FallLineEnd;
  /** True where the ground levels by the rule within 5 m and the line goes to the foot of that low bank. */
  readonly lowBank: boolean;
}

/** Longest fall line, metres horizontal. */
export const FALL_LINE_LIMIT_M = 300;
/** Longest step, metres: on coarse cells half a cell would jump over the rule for level ground. */
const LONGEST_STEP_M = 2.5;
/** Rise over its lowest point that a fall line carries on over, metres: pits, berms and ditches stay under it (practice). */
const CARRY_RISE_M = 1;
/** Most turns down hollows that one way takes. */
const MOST_TURNS = 24;
/** How far on a mapped road may lie for the level ground to be its bench, metres. */
const ROAD_WITHIN_M = 5;

/**
 * The fall line from `start`, first heading `outward` (unit vector away from the road): steepest descent by Runge–Kutta in
 * steps of half a cell, straight on over pits, tracks and narrow flats. Ends where the ground levels, at water, at the
 * last point with data or after 300 m. A start without data gives a line of no points.
 */
export function fallLine(hill: Hill, start: PointM, outward: PointM, around: Surroundings): FallLine {
  const stepM = Math.min(hill.cellM / 2, LONGEST_STEP_M);
  const limit = Math.floor(FALL_LINE_LIMIT_M / stepM + 1e-9);
  const run = Math.round(LEVEL.runM / stepM);
  const x: number[] = [];
  const y: number[] = [];
  const z: number[] = [];
  const isAt = presence(around, start.x, start.y, FALL_LINE_LIMIT_M + LEVEL.runM);
  const compass = compassAt(outward.x, outward.y);
  const to = Float64Array.of(start.x, start.y);
  let lowest = 0;
  let turnedAt = -1;
  let turns = 0;
  const finish = (count: number, why: FallLineEnd, lowBank = false): FallLine => ({
    stepM,
    x: Float64Array.from(x.slice(0, count)),
    y: Float64Array.from(y.slice(0, count)),
    heightM: Float64Array.from(z.slice(0, count)),
    why,
    lowBank,
  });
  for (;;) {
    const height = heightAtPoint(hill, to[0], to[1]);
    if (!Number.isFinite(height))
      return finish(Math.min(x.length, limit + 1), x.length > limit + 1 ? 'limit' : 'no data');
    if (x.length > 0 && isAt('water', to[0], to[1]) && x.length <= limit) return finish(x.length, 'water');
    x.push(to[0]);
    y.push(to[1]);
    z.push(height);
    const i = x.length - 1;
    if (height < z[lowest]) lowest = i;
    const level = i - run;
    if (level >= 0 && levelsAt(z, level, stepM)) {
      const lowBank = level * stepM < LOW_BANK_M;
      const end = lowBank ? bankFoot(z, level, stepM) : level;
      return finish(end + 1, end > 0 && meetsRoad(end) ? 'road' : 'ground levels', lowBank);
    }
    if (level >= limit) return finish(limit + 1, 'limit');
    if (height > z[lowest] + CARRY_RISE_M && i > lowest) turnDownValley();
    stepOn(hill, to[0], to[1], stepM, compass, -1, to);
  }

  function meetsRoad(from: number): boolean {
    const last = Math.min(x.length - 1, from + Math.ceil(ROAD_WITHIN_M / stepM));
    for (let i = from; i <= last; i++) if (isAt('road', x[i], y[i])) return true;
    return false;
  }

  /** The way went up the far side of a hollow: back to its lowest point and on down the hollow, if that goes down. */
  function turnDownValley(): void {
    // A way that came back without getting lower would turn here for ever.
    if (turnedAt === lowest || turns === MOST_TURNS) return;
    turnedAt = lowest;
    const heading = valleyHeading(hill, x[lowest], y[lowest], z[lowest]);
    if (!heading) return;
    turns++;
    x.length = lowest + 1;
    y.length = lowest + 1;
    z.length = lowest + 1;
    to[0] = x[lowest];
    to[1] = y[lowest];
    compass.hx = heading.x;
    compass.hy = heading.y;
  }
}
