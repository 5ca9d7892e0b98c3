import type { FineGround } from '../ground/tiles.ts';
import { type Cut, heightOn } from './section.ts';

/** Where a bench breaks: distance from the middle line along the section (metres), and the two slopes (tangents, > 0 falls outward). */
export interface TrueEdge {
  readonly offsetM: number;
  readonly benchFall: number;
  readonly slopeFall: number;
}

const BENCH_M = 5;
const SLOPE_M = 4;
const GAP_M = 0.5;
const STEP_M = 0.1;

/**
 * The edge by its written definition, on noise-free ground: where a robust line through the 5 m of bench before it meets a
 * robust line through the 4 m of slope after it, the middle ± 0.5 m left out, sought from `start` until it stays. The berm
 * (`bermM` wide, ending at `start`) does not count as bench. Null where the two lines hardly differ.
 */
export function trueEdge(
  ground: FineGround,
  cut: Cut,
  start: number,
  innerLimit: number,
  bermM: number,
): TrueEdge | null {
  let edge = start;
  let bench = { slope: 0, height: 0 };
  let slope = bench;
  for (let round = 0; round < 8; round++) {
    const benchTo = Math.min(edge - GAP_M, bermM > 0 ? start - bermM : edge);
    bench = robustLine(ground, cut, Math.max(innerLimit, edge - BENCH_M), benchTo);
    slope = robustLine(ground, cut, edge + GAP_M, edge + SLOPE_M);
    if (Math.abs(slope.slope - bench.slope) < 0.05) return null;
    const meet = (slope.height - bench.height) / (bench.slope - slope.slope);
    const next = Math.min(start + 2.5, Math.max(start - 2.5, meet));
    if (Math.abs(next - edge) < 0.005) break;
    edge = 0.5 * (edge + next);
  }
  return { offsetM: edge, benchFall: -bench.slope, slopeFall: -slope.slope };
}

/** Line z = height + slope · d of least absolute deviations (by reweighting), over a stretch of a section. */
function robustLine(ground: FineGround, cut: Cut, from: number, to: number): { slope: number; height: number } {
  const count = Math.max(3, Math.round((to - from) / STEP_M) + 1);
  const d = Float64Array.from({ length: count }, (_, k) => from + (k * (to - from)) / (count - 1));
  const z = d.map((distance) => heightOn(ground, cut, distance));
  const weight = new Float64Array(count).fill(1);
  let slope = 0;
  let height = 0;
  for (let round = 0; round < 12; round++) {
    let sw = 0;
    let sd = 0;
    let sz = 0;
    for (let k = 0; k < count; k++) {
      sw += weight[k];
      sd += weight[k] * d[k];
      sz += weight[k] * z[k];
    }
    let sdd = 0;
    let sdz = 0;
    for (let k = 0; k < count; k++) {
      sdd += weight[k] * (d[k] - sd / sw) ** 2;
      sdz += weight[k] * (d[k] - sd / sw) * z[k];
    }
    slope = sdz / sdd;
    height = sz / sw - (slope * sd) / sw;
    for (let k = 0; k < count; k++) weight[k] = 1 / Math.max(0.02, Math.abs(z[k] - height - slope * d[k]));
  }
  return { slope, height };
}
