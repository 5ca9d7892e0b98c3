import { seededRandom, toDegrees } from '../../units/index.ts';
import { breakChain } from './break-chain.ts';
import { groundDrawer } from './ground-draw.ts';
import type { ModelTables } from './model-tables.ts';
import type { SlopeModel } from './slope-model.ts';
import type { Steepest, windowFinder } from './steepest-window.ts';
import { unseenDeg } from './unseen.ts';

export interface AngleDraws {
  /** Steepest window of each drawn ground, degrees, ascending. */
  readonly sortedDeg: Float64Array;
  /** How many draws had their steepest window start at each half knot. */
  readonly startCounts: Int32Array;
  /** Share of draws whose roughness level was waves of 0.10 m or more. */
  readonly roughShare: number;
}

/** Waves from this height on are called rough, metres. */
const ROUGH_RMS_M = 0.1;

/**
 * Draws grounds given the heights and takes each one's steepest window. `heightM` holds the height at each knot, finite.
 * The same heights, tables and settings always give the same draws.
 */
export function drawAngles(
  model: SlopeModel,
  tables: ModelTables,
  findSteepest: ReturnType<typeof windowFinder>,
  heightM: Float64Array,
): AngleDraws {
  const { count: n, knotM } = tables.knots;
  const [meanTan] = model.firstTan;
  const fall = new Float64Array(n);
  for (let k = 0; k < n; k++) fall[k] = heightM[0] - heightM[k] - meanTan * knotM * k;
  const random = seededRandom(model.seed);
  const chain = breakChain(model, tables, fall, random);
  const draw = groundDrawer(model, tables, chain, fall);
  const ground = new Float64Array(n);
  const sortedDeg = new Float64Array(model.draws);
  const startCounts = new Int32Array(2 * n);
  const steepest: Steepest = { slope: 0, halfKnot: 0 };
  let rough = 0;
  for (let i = 0; i < model.burnIn; i++) chain.sweep();
  for (let i = 0; i < model.draws; i++) {
    chain.sweep();
    draw(i, ground);
    findSteepest(ground, steepest);
    sortedDeg[i] = toDegrees(Math.atan(steepest.slope + meanTan)) + unseenDeg(i);
    startCounts[steepest.halfKnot]++;
    const { roughness } = tables.levels[chain.state.level];
    if (roughness.kind === 'waves' && roughness.rmsM >= ROUGH_RMS_M) rough++;
  }
  sortedDeg.sort();
  return { sortedDeg, startCounts, roughShare: rough / model.draws };
}

/** Value below which the share `p` of an ascending array lies, by the line between neighbours. */
export function quantile(sorted: Float64Array, p: number): number {
  const at = p * (sorted.length - 1);
  const low = Math.floor(at);
  const high = Math.min(low + 1, sorted.length - 1);
  return sorted[low] + (at - low) * (sorted[high] - sorted[low]);
}

/** Share of an ascending array at or above `limit`. */
export function shareFrom(sorted: Float64Array, limit: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle] >= limit) high = middle;
    else low = middle + 1;
  }
  return (sorted.length - low) / sorted.length;
}
