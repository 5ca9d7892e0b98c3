import type { Evenness } from './evenness.ts';
import { SECTION_STEP_M } from './sections.ts';

/** What the search weighs; costs are per station. Found on two real roads, see the trials in the design. */
const EVEN_SCALE_M = 0.03;
const EVEN_CAP = 5;
const LEVEL_SLOPE = 0.08;
const COST_PER_SLOPE = 20;
const COST_PER_METRE_OFF = 0.02;
const COST_PER_METRE_CHANGED = 2;
const FREE_STEP_M = 0.15;
const COST_PER_METRE_STEP = 10;
const COST_NO_GROUND = 30;
/** The path may move this many samples from one station to the next. */
const MOVES = 2;

export interface ShiftPath {
  /** Offset of the road found from the centre line at each station, metres, positive to the right. */
  readonly shiftM: Float64Array;
  /** Cost of standing at each station and column, the path's own included; row-major like the evenness. */
  readonly cost: Float64Array;
}

/**
 * Where along each section the road really runs: one path along the stations through the most even ground, neither far
 * from the line nor jumping, in step with the road's own grade (dynamic programming [source: bellman1957]).
 */
export function shiftPath(even: Evenness): ShiftPath {
  const { count, columns, firstOffset, stride, height, along } = even;
  const cost = standingCosts(even);
  const metres = stride * SECTION_STEP_M;
  const best = new Float64Array(count * columns);
  const from = new Int8Array(count * columns);
  best.set(cost.subarray(0, columns));
  for (let i = 1; i < count; i++) {
    const row = i * columns;
    const before = row - columns;
    for (let c = 0; c < columns; c++) {
      let least = Number.POSITIVE_INFINITY;
      let move = 0;
      for (let m = -MOVES; m <= MOVES; m++) {
        const p = c + m;
        if (p < 0 || p >= columns) continue;
        const rise = height[row + c]! - height[before + p]! - along[before + p]!;
        const step = Math.abs(rise) - FREE_STEP_M;
        const total =
          best[before + p]! +
          COST_PER_METRE_CHANGED * Math.abs(m) * metres +
          (step > 0 ? COST_PER_METRE_STEP * step : 0);
        if (total < least) {
          least = total;
          move = m;
        }
      }
      best[row + c] = least + cost[row + c]!;
      from[row + c] = move;
    }
  }
  const shiftM = new Float64Array(count);
  let c = lowest(best, (count - 1) * columns, columns);
  for (let i = count - 1; i >= 0; i--) {
    shiftM[i] = (firstOffset + c * stride) * SECTION_STEP_M;
    c += from[i * columns + c]!;
  }
  return { shiftM, cost };
}

function standingCosts({ count, columns, firstOffset, stride, rms, across }: Evenness): Float64Array {
  const cost = new Float64Array(count * columns);
  for (let i = 0; i < count; i++) {
    for (let c = 0; c < columns; c++) {
      const at = i * columns + c;
      const off = Math.abs(firstOffset + c * stride) * SECTION_STEP_M;
      const even = Math.min(EVEN_CAP, rms[at]! / EVEN_SCALE_M);
      const steep = COST_PER_SLOPE * Math.max(0, Math.abs(across[at]!) - LEVEL_SLOPE);
      const total = even + steep + COST_PER_METRE_OFF * off;
      cost[at] = Number.isNaN(total) ? COST_NO_GROUND : total;
    }
  }
  return cost;
}

function lowest(values: Float64Array, from: number, n: number): number {
  let at = 0;
  for (let c = 1; c < n; c++) if (values[from + c]! < values[from + at]!) at = c;
  return at;
}
