import type { PointM } from '../../geo/index.ts';
import type { PlanVector } from '../../rigging/index.ts';
import type { Bench } from '../../road/index.ts';
import { placeOnBench } from '../bench-place.ts';
import { boxOf, pathHitsBox } from '../box-hit.ts';
import { strip } from '../footprint.ts';
import type { Hazard } from '../hazards.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';

/** The field of a tree or rock ends its clearance short of it, metres. */
export const MARK_SHORT_M = 1.5;

/** The corridor of a turned haul from a bend to an anchor. */
export interface Corridor {
  /** Lanes that it takes, as bits, or that it leaves the usable offsets. */
  readonly lanes: number;
  /** Ids of the marks that stand in it, the anchor itself apart. */
  readonly inWay: readonly string[];
  /** Clear way for the team, metres, once somebody asked. */
  roomM: number | null;
}

/** A corridor that is not clear. */
export const BLOCKED = -1;

/** Points along the sides of a corridor are tested this far apart, metres; rounding alone refuses nothing. */
const STEP_M = 0.5;
const TOUCH_M = 1e-6;

/**
 * True where a strip of a width from a to b, metres, lies inside the usable offsets of the bench, both read linearly between
 * stations: chords on bends are tested as they run. `from` is an element near a.
 */
export function insideUsable(
  bench: Bench,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  widthM: number,
  from: number,
): boolean {
  const lengthM = Math.sqrt((bx - ax) ** 2 + (by - ay) ** 2);
  if (!(lengthM > 0)) return false;
  const nx = ((by - ay) / lengthM) * (widthM / 2);
  const ny = (-(bx - ax) / lengthM) * (widthM / 2);
  const n = Math.max(1, Math.ceil(lengthM / STEP_M));
  const at = scratch;
  for (const side of SIDES) {
    let near = Math.floor(from);
    for (let k = 0; k <= n; k++) {
      const x = ax + ((bx - ax) * k) / n + side * nx;
      const y = ay + ((by - ay) * k) / n + side * ny;
      if (!placeOnBench(bench, x, y, near, at) || !withinUsable(bench, at[0], at[1])) return false;
      near = Math.floor(at[0]);
    }
  }
  return true;
}

/**
 * How far a strip of a width from a point straight along a unit vector lies inside the usable offsets of the bench, metres: looked at
 * from `startM` to `mostM`; `startM` where it leaves them at once. `from` is an element near the point at `startM`.
 */
export function usableUpToM(
  bench: Bench,
  { x, y }: PointM,
  way: PlanVector,
  widthM: number,
  from: number,
  startM: number,
  mostM: number,
): number {
  const half = widthM / 2;
  const at = scratch;
  let near = Math.floor(from);
  let clearM = startM;
  for (let k = 0; clearM < mostM; k++) {
    const m = Math.min(mostM, startM + k * STEP_M);
    for (const side of SIDES) {
      const px = x + way.x * m + side * way.y * half;
      const py = y + way.y * m - side * way.x * half;
      if (!placeOnBench(bench, px, py, near, at) || !withinUsable(bench, at[0], at[1])) return clearM;
    }
    near = Math.floor(at[0]);
    clearM = m;
  }
  return mostM;
}

const SIDES = [-1, 1] as const;
const scratch = new Float64Array(2);

/** True where an offset at an element of the bench, with fractions, lies where people may stand. */
function withinUsable({ left, right, count }: Bench, element: number, offsetM: number): boolean {
  const i = Math.min(count - 2, Math.floor(element));
  const t = element - i;
  const l = left.usableOffsetM[i] + t * (left.usableOffsetM[i + 1] - left.usableOffsetM[i]);
  const r = right.usableOffsetM[i] + t * (right.usableOffsetM[i + 1] - right.usableOffsetM[i]);
  return offsetM >= l - TOUCH_M && offsetM <= r + TOUCH_M;
}

/** Kinds of marks that a haul corridor cannot cross; a wire overhead or soft ground is walked under and over. */
const BLOCKS = new Set(['tree', 'rock', 'pole', 'sign', 'gate', 'barrier', 'wall', 'step', 'water']);

/** What is marked or mapped in a strip from a to b, but for the ids of its own anchors and kinds that do not stop it (`passes`). */
export function marksInWay(
  hazards: readonly Hazard[],
  ax: number,
  ay: number,
  bx: number,
  by: number,
  except: readonly string[],
  passes: readonly string[] = [],
): Hazard[] {
  const box = boxOf(strip(ax, ay, bx, by, LAYOUT_LIMITS.corridorM));
  return hazards.filter(
    ({ id, kind, xy }) => BLOCKS.has(kind) && !passes.includes(kind) && !except.includes(id) && pathHitsBox(xy, box, 0),
  );
}

/** Ways from one point that stay inside the usable offsets as far as each element: least and most slope to the left of a way. */
export interface Sight {
  readonly from: Float64Array;
  readonly to: Float64Array;
}

/**
 * For a corridor that starts at a point and runs along the road (`along` 1 with its drawing, −1 against): the slopes to the
 * left of `way`, metres a metre, at which it clears every usable offset up to each element. Necessary, not sufficient: a
 * sieve before `insideUsable`. Elements not reached hold an empty range. Fills and gives back `into`.
 */
export function corridorSight(
  bench: Bench,
  x: number,
  y: number,
  element: number,
  along: -1 | 1,
  way: { readonly x: number; readonly y: number },
  into: Sight,
): Sight {
  const { count, left, right, normalX, normalY } = bench;
  const { from, to } = into;
  from.fill(Number.POSITIVE_INFINITY);
  to.fill(Number.NEGATIVE_INFINITY);
  const half = LAYOUT_LIMITS.corridorM / 2 - TOUCH_M;
  const onLeft = along > 0 ? left.usableOffsetM : right.usableOffsetM;
  const onRight = along > 0 ? right.usableOffsetM : left.usableOffsetM;
  let least = -1;
  let most = 1;
  const first = along > 0 ? Math.ceil(element) : Math.floor(element);
  for (let i = first; i >= 0 && i < count; i += along) {
    const px = bench.x[i] - x;
    const py = bench.y[i] - y;
    const ahead = way.x * px + way.y * py;
    const aside = way.x * py - way.y * px;
    const nAhead = way.x * normalX[i] + way.y * normalY[i];
    const nAside = way.x * normalY[i] - way.y * normalX[i];
    const leftAhead = ahead + onLeft[i] * nAhead;
    const rightAhead = ahead + onRight[i] * nAhead;
    if (leftAhead > half) most = Math.min(most, (aside + onLeft[i] * nAside - half) / leftAhead);
    if (rightAhead > half) least = Math.max(least, (aside + onRight[i] * nAside + half) / rightAhead);
    if (!(least <= most)) break;
    from[i] = least;
    to[i] = most;
  }
  return into;
}

export const emptySight = (count: number): Sight => ({ from: new Float64Array(count), to: new Float64Array(count) });
