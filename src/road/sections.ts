import { type Ground, sampleLine } from '../terrain/index.ts';
import type { CentreLine } from './centre-line.ts';

/** Distance between samples of a section, metres. */
export const SECTION_STEP_M = 0.5;

/**
 * Heights across the road: `z[i · width + half + j]` is the ground at station i, j · 0.5 m to the right of the centre line
 * (j from −half to half), metres, NaN where the file has no data or the section was cut off.
 */
export interface Sections {
  readonly count: number;
  readonly half: number;
  readonly width: number;
  readonly z: Float64Array;
}

/** Cuts whole sections of ± `halfM` across a centre line. */
export function cutSections(ground: Ground, { count, x, y, nx, ny }: CentreLine, halfM: number): Sections {
  const half = Math.round(halfM / SECTION_STEP_M);
  const width = 2 * half + 1;
  const z = new Float64Array(count * width);
  for (let i = 0; i < count; i++) {
    const dx = nx[i]! * SECTION_STEP_M;
    const dy = ny[i]! * SECTION_STEP_M;
    sampleLine(ground, x[i]! - half * dx, y[i]! - half * dy, dx, dy, width, z, i * width);
  }
  return { count, half, width, z };
}

/** The same sections with NaN beyond `reach`, metres to the left and right of station i at [2i], [2i + 1]. */
export function cutOff({ count, half, width, z }: Sections, reach: Float64Array): Sections {
  const kept = z.slice();
  for (let i = 0; i < count; i++) {
    const left = Math.min(half, Math.floor(reach[2 * i]! / SECTION_STEP_M));
    const right = Math.min(half, Math.floor(reach[2 * i + 1]! / SECTION_STEP_M));
    const at = i * width + half;
    kept.fill(Number.NaN, at - half, at - left);
    kept.fill(Number.NaN, at + right + 1, at + half + 1);
  }
  return { count, half, width, z: kept };
}
