import type { Bench, BenchSide } from '../road/index.ts';
import { type Ground, heightAt } from '../terrain/index.ts';
import { toRadians } from '../units/index.ts';
import { nearestElement, placeOnBench } from './bench-place.ts';
import type { Hazard } from './hazards.ts';

/** One flag an element of the bench on each side: 1 where the first 2 m below the edge are over the limit or a wall. */
export interface SteepBelow {
  readonly left: Uint8Array;
  readonly right: Uint8Array;
}

/** Stretch below the edge that counts, metres, and where it may begin: the edge is known to about this. */
const RUN_M = 2;
const STARTS_M = [0, 0.5];
/** A wall this far inside or outside the edge holds it up, metres. */
const WALL_INSIDE_M = 1;
const WALL_OUTSIDE_M = 2;

/** Where a lip is too steep for the lesser setback: by the ground below the edge, by its slope line, by walls and steps. */
export function steepBelow(
  bench: Bench,
  ground: Ground | null,
  hazards: readonly Hazard[],
  steepDeg: number,
): SteepBelow {
  const flags = { left: bySlope(bench, -1, ground, steepDeg), right: bySlope(bench, 1, ground, steepDeg) };
  for (const hazard of hazards) {
    if (hazard.kind === 'wall' || hazard.kind === 'step') flagWall(bench, hazard.xy, flags);
  }
  return flags;
}

function bySlope(bench: Bench, sign: -1 | 1, ground: Ground | null, steepDeg: number): Uint8Array {
  const side = sign < 0 ? bench.left : bench.right;
  const limit = Math.tan(toRadians(steepDeg));
  const flags = new Uint8Array(bench.count);
  for (let i = 0; i < bench.count; i++) {
    if (-side.outerSlope[i] > limit || (ground !== null && steepGround(bench, side, sign, ground, i, limit)))
      flags[i] = 1;
  }
  return flags;
}

function steepGround(bench: Bench, side: BenchSide, sign: number, ground: Ground, i: number, limit: number): boolean {
  const x = side.edgeX[i];
  const y = side.edgeY[i];
  const dx = sign * bench.normalX[i];
  const dy = sign * bench.normalY[i];
  return STARTS_M.some((startM) => {
    const fall =
      heightAt(ground, x + dx * startM, y + dy * startM) -
      heightAt(ground, x + dx * (startM + RUN_M), y + dy * (startM + RUN_M));
    return fall > limit * RUN_M;
  });
}

function flagWall(bench: Bench, xy: Float64Array, flags: SteepBelow): void {
  const at = new Float64Array(2);
  for (let k = 0; k + 1 < xy.length; k += 2) {
    const bx = xy[k + 2] ?? xy[k];
    const by = xy[k + 3] ?? xy[k + 1];
    const n = Math.max(1, Math.ceil(Math.hypot(bx - xy[k], by - xy[k + 1])));
    for (let j = 0; j <= n; j++) {
      const x = xy[k] + ((bx - xy[k]) * j) / n;
      const y = xy[k + 1] + ((by - xy[k + 1]) * j) / n;
      if (!placeOnBench(bench, x, y, nearestElement(bench, x, y), at)) continue;
      const i = Math.round(at[0]);
      flagNear(flags.left, bench.left.edgeOffsetM[i] - at[1], i);
      flagNear(flags.right, at[1] - bench.right.edgeOffsetM[i], i);
    }
  }
}

function flagNear(flags: Uint8Array, outsideM: number, i: number): void {
  if (outsideM >= -WALL_INSIDE_M && outsideM <= WALL_OUTSIDE_M) flags.fill(1, Math.max(0, i - 1), i + 2);
}
