import type { Time } from './update.ts';

/** How far a time may lie ahead of this device's clock before it no longer pushes that clock, milliseconds. */
export const AHEAD_MS = 86_400_000;

/**
 * The next time of a device: not before `last`, the latest it wrote or read [source: kulkarni2014], unless that lies over a day
 * ahead of `wallMs` (somebody's clock had jumped); then this device's own clock counts again. For display alone.
 */
export function nextTime(last: Time, wallMs: number): Time {
  const wall = Math.max(0, Math.floor(Number.isFinite(wallMs) ? wallMs : 0));
  if (last[0] > wall + AHEAD_MS || wall > last[0]) return [wall, 0];
  return [last[0], last[1] + 1];
}

/** The later of two times, the second taken only where it is not over a day ahead of `wallMs`. */
export function laterTime(last: Time, other: Time, wallMs: number): Time {
  return other[0] <= wallMs + AHEAD_MS && compareTimes(other, last) > 0 ? other : last;
}

/** Negative where `a` is earlier. */
export const compareTimes = (a: Time, b: Time): number => a[0] - b[0] || a[1] - b[1];
