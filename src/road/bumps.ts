import type { Sections } from './sections.ts';

/** A berm, kerb or ditch narrower than this many samples (2.5 m) … */
const SAMPLES = 6;
/** … and of this height is crossed, not taken for the edge; less is noise, more is ground. */
const LOWEST_M = 0.12;
const HIGHEST_M = 0.65;
/** Where a bump begins, as height above the ground without it. */
const FOOT_M = 0.02;

/**
 * Sections with low berms, kerbs and narrow ditches taken out: grey-scale opening, then closing [source: serra1982] with a flat
 * element of 2.5 m, kept only over whole bumps whose height is 0.12 to 0.65 m. Slopes and corners stay as they are.
 */
export function withoutBumps({ count, half, width, z }: Sections): Float64Array {
  const out = z.slice();
  const level = new Float64Array(width);
  const inner = new Float64Array(width);
  for (let i = 0; i < count; i++) {
    const row = out.subarray(i * width, (i + 1) * width);
    let from = half;
    let to = half;
    if (Number.isNaN(row[half]!)) continue;
    while (from > 0 && !Number.isNaN(row[from - 1]!)) from--;
    while (to < width - 1 && !Number.isNaN(row[to + 1]!)) to++;
    flatten(row, from, to, 1, inner, level);
    flatten(row, from, to, -1, inner, level);
  }
  return out;
}

/** Takes bumps out of row[from … to]: those above the ground for sign 1, those below it for sign −1. */
function flatten(
  row: Float64Array,
  from: number,
  to: number,
  sign: 1 | -1,
  inner: Float64Array,
  level: Float64Array,
): void {
  const last = to - SAMPLES + 1;
  if (last <= from) return;
  for (let j = from; j <= last; j++) {
    let least = sign * row[j]!;
    for (let t = 1; t < SAMPLES; t++) if (sign * row[j + t]! < least) least = sign * row[j + t]!;
    inner[j] = least;
  }
  for (let j = from; j <= to; j++) {
    let most = Number.NEGATIVE_INFINITY;
    const start = Math.max(j - SAMPLES + 1, from);
    const end = Math.min(j, last);
    for (let k = start; k <= end; k++) if (inner[k]! > most) most = inner[k]!;
    level[j] = most;
  }
  for (let j = from; j <= to; ) {
    if (sign * row[j]! - level[j]! < FOOT_M) {
      j++;
      continue;
    }
    const start = j;
    let peak = 0;
    while (j <= to && sign * row[j]! - level[j]! >= FOOT_M) {
      peak = Math.max(peak, sign * row[j]! - level[j]!);
      j++;
    }
    if (peak < LOWEST_M || peak > HIGHEST_M) continue;
    for (let k = start; k < j; k++) row[k] = sign * level[k]!;
  }
}
