import { toDegrees } from '../units/index.ts';
import type { CentreLine } from './centre-line.ts';
import { SECTION_STEP_M, type Sections } from './sections.ts';

/** Grade is taken over ± this many stations, crossfall over this much of the bench either side of its middle, metres. */
const GRADE_HALF = 10;
const CROSSFALL_HALF_M = 3;
const CROSSFALL_POOL = 4;

/** Grade along the line at each station, degrees, up positive: least squares of height on distance over ± 10 stations. */
export function gradeAlong(profile: Float64Array, { x, y, count }: CentreLine): Float64Array {
  const distance = new Float64Array(count);
  for (let i = 1; i < count; i++) distance[i] = distance[i - 1]! + Math.hypot(x[i]! - x[i - 1]!, y[i]! - y[i - 1]!);
  const out = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let n = 0;
    let sd = 0;
    let sz = 0;
    let sdd = 0;
    let sdz = 0;
    for (let k = Math.max(0, i - GRADE_HALF); k <= Math.min(count - 1, i + GRADE_HALF); k++) {
      const z = profile[k]!;
      if (Number.isNaN(z)) continue;
      const d = distance[k]! - distance[i]!;
      n++;
      sd += d;
      sz += z;
      sdd += d * d;
      sdz += d * z;
    }
    const det = n * sdd - sd * sd;
    out[i] = n >= 5 && det > 0 ? toDegrees(Math.atan((n * sdz - sd * sz) / det)) : Number.NaN;
  }
  return out;
}

/**
 * Fall across the bench at each station, degrees, positive to the right: least squares over what lies between the edges,
 * at most ± 3 m of the middle, pooled over nine stations. `left`, `right` are distances outward from the centre line.
 */
export function crossfall({ count, half, width, z }: Sections, left: Float64Array, right: Float64Array): Float64Array {
  const slope = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const from = -Math.floor(inner(left[i]!) / SECTION_STEP_M);
    const to = Math.floor(inner(right[i]!) / SECTION_STEP_M);
    const middle = (from + to) / 2;
    let tilt = 0;
    let squares = 0;
    for (let j = from; j <= to; j++) {
      tilt += (j - middle) * z[i * width + half + j]!;
      squares += (j - middle) ** 2;
    }
    slope[i] = squares > 0 ? tilt / squares / SECTION_STEP_M : Number.NaN;
  }
  const out = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let sum = 0;
    let n = 0;
    for (let k = Math.max(0, i - CROSSFALL_POOL); k <= Math.min(count - 1, i + CROSSFALL_POOL); k++) {
      if (Number.isNaN(slope[k]!)) continue;
      sum += slope[k]!;
      n++;
    }
    out[i] = n > 0 ? toDegrees(Math.atan(-sum / n)) : Number.NaN;
  }
  return out;
}

/** Half a metre inside an edge, so that its smeared corner does not count. */
const inner = (edgeM: number): number =>
  Number.isNaN(edgeM) ? CROSSFALL_HALF_M : Math.max(1, Math.min(CROSSFALL_HALF_M, edgeM - 0.5));
