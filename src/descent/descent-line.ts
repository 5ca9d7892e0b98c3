import type { PointM } from '../geo/index.ts';
import { azimuthOf } from '../units/index.ts';
import type { FallLine, FallLineEnd } from './fall-line.ts';

export type DescentEnd = FallLineEnd | 'patient point' | 'fall line bends';

/** The straight plan line that the rope takes. */
export interface DescentLine {
  readonly start: PointM;
  readonly end: PointM;
  /** Unit vector from start to end. */
  readonly direction: PointM;
  readonly lengthM: number;
  readonly azimuthDeg: number;
  readonly why: DescentEnd;
  /** True where the fall line goes on beyond the end of this line. */
  readonly bends: boolean;
}

/** Departure of the fall line from its chord at which the descent ends, metres. */
export const BEND_M = 5;

/** The straight line from a to b; null where they are the same point. */
export function lineBetween(start: PointM, end: PointM, why: DescentEnd, bends = false): DescentLine | null {
  const dx = end.x - start.x;
  const dy = end.y - start.y;
  const lengthM = Math.hypot(dx, dy);
  if (!(lengthM > 0)) return null;
  const direction = { x: dx / lengthM, y: dy / lengthM };
  return { start, end, direction, lengthM, azimuthDeg: azimuthOf(dx, dy), why, bends };
}

/**
 * The descent along a fall line: straight to its end, or, where the fall line leaves the chord so drawn by more than 5 m,
 * to the farthest point up to which it does not. Null for a fall line of under two points.
 */
export function descentAlong(fall: FallLine): DescentLine | null {
  const last = fall.x.length - 1;
  if (last < 1) return null;
  const start = { x: fall.x[0], y: fall.y[0] };
  const straight = straightUpTo(fall);
  const end = { x: fall.x[straight], y: fall.y[straight] };
  return lineBetween(start, end, straight < last ? 'fall line bends' : fall.why, straight < last);
}

/** Last point i of a line such that no point before it, for this and every earlier i, lies over 5 m from the chord 0–i. */
function straightUpTo({ x, y }: FallLine): number {
  for (let i = 2; i < x.length; i++) {
    const cx = x[i] - x[0];
    const cy = y[i] - y[0];
    const length = Math.hypot(cx, cy);
    for (let j = 1; j < i; j++) {
      const px = x[j] - x[0];
      const py = y[j] - y[0];
      const along = (px * cx + py * cy) / length;
      const off = along < 0 ? Math.hypot(px, py) : Math.abs(px * cy - py * cx) / length;
      if (off > BEND_M) return i - 1;
    }
  }
  return x.length - 1;
}
