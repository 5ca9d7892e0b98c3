import { toDegrees } from '../units/index.ts';
import type { SideSign } from './edge-evidence.ts';
import { SECTION_STEP_M, type Sections } from './sections.ts';

/** The steepest stretch is taken over this many samples (5 m), by least squares. */
const WINDOW = 11;
const WINDOW_MEAN = (WINDOW - 1) / 2;
const WINDOW_SQUARES = (WINDOW * (WINDOW * WINDOW - 1)) / 12;
/** The slope ends where a window is gentler than this (tangent of 20°). */
const ENDS_UNDER = 0.364;
/** How far up it is followed, metres in plan. */
const LOOK_M = 35;

/** The slope over the road: its steepest 5 m in degrees, and the height of what is that steep without a break, metres. */
export interface SlopeAbove {
  readonly angleDeg: number;
  readonly heightM: number;
}

/** A slope above the road over this angle and height can send something down on the crew (common practice, no source). */
export const LOOSE_ABOVE = { angleDeg: 35, heightM: 3 } as const;

/** What rises from the toe, `toeM` metres outward from the centre line of station i; null where the ground does not rise. */
export function slopeAbove({ half, width, z }: Sections, side: SideSign, i: number, toeM: number): SlopeAbove | null {
  const middle = i * width + half;
  const from = Math.round(toeM / SECTION_STEP_M);
  const to = Math.min(half, from + LOOK_M / SECTION_STEP_M);
  let steepest = 0;
  let top = z[middle + side * from]!;
  const foot = top;
  for (let j = from; j + WINDOW - 1 <= to; j++) {
    let tilt = 0;
    for (let k = 0; k < WINDOW; k++) tilt += (k - WINDOW_MEAN) * z[middle + side * (j + k)]!;
    const slope = tilt / WINDOW_SQUARES / SECTION_STEP_M;
    if (!(slope >= ENDS_UNDER) && j > from + 2) break;
    if (slope > steepest) steepest = slope;
    for (let k = 0; k < WINDOW; k++) top = Math.max(top, z[middle + side * (j + k)]!);
  }
  return steepest > 0 ? { angleDeg: toDegrees(Math.atan(steepest)), heightM: top - foot } : null;
}
