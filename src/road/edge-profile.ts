import type { SideSign } from './edge-evidence.ts';
import { SECTION_STEP_M, type Sections } from './sections.ts';

/** Stations either side that a profile across the edge is pooled from. */
const POOL = 4;

/**
 * Ground across the edge, pooled over nine stations that share the edge's piece and laid over each other at the edge:
 * heights every 0.5 m from `inwardM` inside it to `outwardM` beyond it, metres above the ground at the edge, written to
 * `out`. A pooled value rests on the stations that have ground there; NaN where none has.
 */
export function edgeProfile(
  { count, half, width, z }: Sections,
  side: SideSign,
  edgeM: Float64Array,
  heightM: Float64Array,
  piece: Int16Array,
  i: number,
  inwardM: number,
  out: Float64Array,
): void {
  const first = -inwardM / SECTION_STEP_M;
  for (let k = 0; k < out.length; k++) {
    let sum = 0;
    let n = 0;
    for (let s = Math.max(0, i - POOL); s <= Math.min(count - 1, i + POOL); s++) {
      if (piece[s] !== piece[i]) continue;
      const at = edgeM[s]! / SECTION_STEP_M + first + k;
      const j = Math.floor(at);
      if (!(j >= -half && j < half)) continue;
      const middle = s * width + half;
      const a = z[middle + side * j]!;
      const h = a + (at - j) * (z[middle + side * (j + 1)]! - a) - heightM[s]!;
      if (Number.isNaN(h)) continue;
      sum += h;
      n++;
    }
    out[k] = n > 0 ? sum / n : Number.NaN;
  }
}
