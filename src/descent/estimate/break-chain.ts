import type { Random } from '../../units/index.ts';
import type { LevelTable, ModelTables } from './model-tables.ts';
import type { SlopeModel } from './slope-model.ts';
import { whiten, whitenTransposed } from './whitening.ts';

/** Where the chain stands: a break index or −1 for each slot, and the level of `tables.levels`. */
export interface ChainState {
  readonly slots: Int32Array;
  level: number;
}

/** What the heights say under one level, start height and first slope taken out. */
interface Evidence {
  readonly table: LevelTable;
  /** Inner products of heights and ramps. */
  readonly b: Float64Array;
  /** Inner products of heights with start height and first slope. */
  readonly base: Float64Array;
  /** Log likelihood without any break. */
  readonly logLikelihood: number;
}

export interface BreakChain {
  readonly state: ChainState;
  /** Redraws some slots and the level. */
  sweep(): void;
  /** Breaks in use, in `active`, and the factor of their inner products, prior included, in `factor` (stride `breakSlots`). */
  readonly active: Int32Array;
  readonly factor: Float64Array;
  /** The factor's solution for the heights: factor · solution = b. */
  readonly solution: Float64Array;
  /** Number of breaks in use. */
  factorise(): number;
  readonly evidence: readonly Evidence[];
}

/**
 * The Markov chain over breaks and roughness, slopes integrated out. `fallM` holds the fall from the first knot less the
 * mean first slope of the model, one value a knot. Each sweep redraws a few slots over all positions or "absent" (Gibbs),
 * then the level.
 *
 * For a break at p beside those in use (set S, factor L): d = G_pp + 1/τ² − |L⁻¹G_Sp|², h = b_p − (L⁻¹G_Sp)·(L⁻¹b_S), and
 * the likelihood gains exp(h²/2d) / (τ√d) (the marginal of a linear Gaussian model by Schur's complement).
 * The first sweeps hold the first level, straight pieces alone, so that breaks are tried before roughness explains them away.
 */
export function breakChain(model: SlopeModel, tables: ModelTables, fallM: Float64Array, random: Random): BreakChain {
  const evidence = tables.levels.map((table) => weigh(table, tables, fallM));
  const { breaks } = tables;
  const slotCount = model.breakSlots;
  const priorPrecision = 1 / (model.breakTan * model.breakTan);
  const odds = model.breakChance / (1 - model.breakChance) / breaks / model.breakTan;
  const state: ChainState = { slots: new Int32Array(slotCount).fill(-1), level: 0 };
  let sweeps = 0;
  const active = new Int32Array(slotCount);
  const factor = new Float64Array(slotCount * slotCount);
  const solution = new Float64Array(slotCount);
  const d = new Float64Array(breaks);
  const h = new Float64Array(breaks);
  const forward = new Float64Array(slotCount * breaks);
  const levelWeights = new Float64Array(evidence.length);
  // A number that is given back is an object each time: here it is asked for thousands of times.
  const gained = new Float64Array(1);

  function collect(skip: number): number {
    let count = 0;
    for (let i = 0; i < slotCount; i++) if (i !== skip && state.slots[i] >= 0) active[count++] = state.slots[i];
    return count;
  }

  /** Fills `factor` and `solution` for the first `count` of `active`, and `gained` with twice the log likelihood gained. */
  function factoriseActive(count: number, e: Evidence): void {
    const { ramps } = e.table;
    let gain = 0;
    for (let i = 0; i < count; i++) {
      const row = active[i] * breaks;
      const at = i * slotCount;
      let diagonal = ramps[row + active[i]] + priorPrecision;
      let right = e.b[active[i]];
      for (let j = 0; j < i; j++) {
        let sum = ramps[row + active[j]];
        for (let m = 0; m < j; m++) sum -= factor[at + m] * factor[j * slotCount + m];
        sum /= factor[j * slotCount + j];
        factor[at + j] = sum;
        diagonal -= sum * sum;
        right -= sum * solution[j];
      }
      const root = Math.sqrt(diagonal);
      factor[at + i] = root;
      solution[i] = right / root;
      gain += solution[i] * solution[i] - Math.log(diagonal);
    }
    gained[0] = gain;
  }

  function redrawSlot(slot: number): void {
    const e = evidence[state.level];
    const { ramps } = e.table;
    const b = e.b;
    const count = collect(slot);
    factoriseActive(count, e);
    const diagonalStep = breaks + 1;
    for (let p = 0; p < breaks; p++) {
      d[p] = ramps[p * diagonalStep] + priorPrecision;
      h[p] = b[p];
    }
    for (let i = 0; i < count; i++) {
      const row = active[i] * breaks;
      const at = i * breaks;
      const inverse = 1 / factor[i * slotCount + i];
      const solved = solution[i];
      for (let p = 0; p < breaks; p++) forward[at + p] = ramps[row + p];
      for (let m = 0; m < i; m++) {
        const f = factor[i * slotCount + m];
        const from = m * breaks;
        for (let p = 0; p < breaks; p++) forward[at + p] -= f * forward[from + p];
      }
      for (let p = 0; p < breaks; p++) {
        const v = forward[at + p] * inverse;
        forward[at + p] = v;
        d[p] -= v * v;
        h[p] -= v * solved;
      }
    }
    let best = 0;
    for (let p = 0; p < breaks; p++) {
      const gain = (0.5 * h[p] * h[p]) / d[p];
      h[p] = gain;
      if (gain > best) best = gain;
    }
    let total = 0;
    for (let p = 0; p < breaks; p++) {
      const short = h[p] - best;
      if (short > -30) total += (odds * Math.exp(short)) / Math.sqrt(d[p]);
      h[p] = total;
    }
    const pick = random.next() * (total + Math.exp(-best));
    state.slots[slot] = pick >= total ? -1 : firstAbove(h, breaks, pick);
  }

  function redrawLevel(): void {
    const count = collect(-1);
    let best = -Infinity;
    for (let r = 0; r < evidence.length; r++) {
      factoriseActive(count, evidence[r]);
      const value = evidence[r].logLikelihood + 0.5 * gained[0];
      levelWeights[r] = value;
      if (value > best) best = value;
    }
    let total = 0;
    for (let r = 0; r < evidence.length; r++) {
      total += Math.exp(levelWeights[r] - best);
      levelWeights[r] = total;
    }
    state.level = firstAbove(levelWeights, evidence.length, random.next() * total);
  }

  return {
    state,
    active,
    factor,
    solution,
    evidence,
    sweep() {
      for (let i = 0; i < model.slotsPerSweep; i++) redrawSlot(Math.floor(random.next() * slotCount));
      if (++sweeps > model.straightSweeps) redrawLevel();
    },
    factorise() {
      const count = collect(-1);
      factoriseActive(count, evidence[state.level]);
      return count;
    },
  };
}

function weigh(table: LevelTable, tables: ModelTables, fallM: Float64Array): Evidence {
  const { breaks } = tables;
  const { count: n, knotM } = tables.knots;
  const white = new Float64Array(n);
  const weighted = new Float64Array(n);
  whiten(table.whitening, fallM, white);
  whitenTransposed(table.whitening, white, weighted);
  let square = 0;
  for (let k = 0; k < n; k++) square += white[k] * white[k];
  // running sums from the far end give the products with a ramp from every knot at once
  const b = new Float64Array(breaks);
  let first = 0;
  let second = 0;
  for (let k = n - 1; k > 0; k--) {
    first += weighted[k];
    second += first * knotM;
    if (k >= 2) b[k - 2] = second;
  }
  const bh = first + weighted[0];
  const bs = second;
  const [hh, hs, ss] = table.baseInverse;
  const ch = hh * bh + hs * bs;
  const cs = hs * bh + ss * bs;
  const { baseRamps } = table;
  for (let p = 0; p < breaks; p++) b[p] -= ch * baseRamps[p] + cs * baseRamps[breaks + p];
  return {
    table,
    b,
    base: Float64Array.of(bh, bs),
    logLikelihood: table.logConstant - 0.5 * (square - ch * bh - cs * bs),
  };
}

function firstAbove(cumulative: Float64Array, count: number, value: number): number {
  for (let i = 0; i < count; i++) if (cumulative[i] > value) return i;
  return count - 1;
}
