import { toRadians } from '../units/index.ts';
import type { Hill } from './hill.ts';

/** Slope under which the way goes straight on, and from which it follows the ground alone, tan (practice). */
const STRAIGHT_TAN = Math.tan(toRadians(8));
const FOLLOW_TAN = Math.tan(toRadians(14));
/** Distance over which the heading follows the ground, metres: longer than a track is wide. */
const HEADING_M = 4;

/**
 * Direction of the way at a point: straight down on a real slope, straight on over tracks, flats and pits, and a mixture
 * between, so that it is continuous. `up` of −1 goes down, +1 goes up.
 */
export interface Compass {
  /** Heading, unit vector. */
  hx: number;
  hy: number;
  /** Share in which the ground, not the heading, gave the last direction. */
  followed: number;
  readonly out: Float64Array;
}

export const compassAt = (hx: number, hy: number): Compass => ({ hx, hy, followed: 0, out: new Float64Array(2) });

/** Writes the unit direction at (x, y) into `compass.out`. */
export function directionAt(hill: Hill, x: number, y: number, compass: Compass, up: number): void {
  const { out, hx, hy } = compass;
  hill.gradient(x, y, out);
  const slope = Math.hypot(out[0], out[1]);
  let share = ramp((slope - STRAIGHT_TAN) / (FOLLOW_TAN - STRAIGHT_TAN));
  if (!(share > 0)) {
    compass.followed = 0;
    out[0] = hx;
    out[1] = hy;
    return;
  }
  const gx = (up * out[0]) / slope;
  const gy = (up * out[1]) / slope;
  share *= ramp(2 * (gx * hx + gy * hy));
  const x1 = share * gx + (1 - share) * hx;
  const y1 = share * gy + (1 - share) * hy;
  const length = Math.hypot(x1, y1);
  compass.followed = share;
  out[0] = x1 / length;
  out[1] = y1 / length;
}

/** One step of the classical fourth-order Runge–Kutta method; writes the end point into `to` and turns the heading. */
export function stepOn(
  hill: Hill,
  x: number,
  y: number,
  stepM: number,
  compass: Compass,
  up: number,
  to: Float64Array,
): void {
  const { out } = compass;
  directionAt(hill, x, y, compass, up);
  const followed = compass.followed;
  const ax = out[0];
  const ay = out[1];
  directionAt(hill, x + (stepM / 2) * ax, y + (stepM / 2) * ay, compass, up);
  const bx = out[0];
  const by = out[1];
  directionAt(hill, x + (stepM / 2) * bx, y + (stepM / 2) * by, compass, up);
  const cx = out[0];
  const cy = out[1];
  directionAt(hill, x + stepM * cx, y + stepM * cy, compass, up);
  const vx = ax + 2 * (bx + cx) + out[0];
  const vy = ay + 2 * (by + cy) + out[1];
  const length = Math.hypot(vx, vy);
  to[0] = x + (stepM * vx) / length;
  to[1] = y + (stepM * vy) / length;
  const turn = Math.min(1, (followed * stepM) / HEADING_M);
  const hx = compass.hx + turn * (vx / length - compass.hx);
  const hy = compass.hy + turn * (vy / length - compass.hy);
  const h = Math.hypot(hx, hy);
  compass.hx = hx / h;
  compass.hy = hy / h;
}

const ramp = (t: number): number => Math.min(1, Math.max(0, t));
