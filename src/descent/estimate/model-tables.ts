import {
  type ErrorChain,
  errorChain,
  type Knots,
  stationaryCovariance,
  type WaveStep,
  wanderCovariance,
  waveStep,
} from './roughness-levels.ts';
import type { Roughness, SlopeModel } from './slope-model.ts';
import { type Whitening, whitenDense, whitenStationary } from './whitening.ts';

/** What the chain needs of one roughness level under one raster error; depends on lengths and settings, not on heights. */
export interface LevelTable {
  readonly roughness: Roughness;
  readonly error: ErrorChain;
  readonly whitening: Whitening;
  /** Log of prior weight, less half the log determinants that do not depend on the breaks. */
  readonly logConstant: number;
  /** Inner products of the breaks' ramps under this level, start height and first slope taken out; breaks², row-major. */
  readonly ramps: Float64Array;
  /** Inner products of start height and of first slope with each ramp; 2 × breaks, row-major. */
  readonly baseRamps: Float64Array;
  /** Inverse of the inner products of start height and first slope, prior included: [hh, hs, ss]. */
  readonly baseInverse: Float64Array;
}

export interface ModelTables {
  readonly knots: Knots;
  readonly wave: WaveStep;
  readonly levels: readonly LevelTable[];
  /** Break p of the tables stands at knot p + 1; its ramp is (k − p − 1)·knotM at knots after it. */
  readonly breaks: number;
}

/** One possible raster error: its σ in metres and how likely it is held to be. */
export interface ErrorGuess {
  readonly sigmaM: number;
  readonly weight: number;
}

/** Start height has almost no prior: standard deviation of 100 m. */
const HEIGHT_PRECISION = 1e-4;

export function modelTables(model: SlopeModel, knots: Knots, guesses: readonly ErrorGuess[]): ModelTables {
  const wave = waveStep(model, knots);
  const levels: LevelTable[] = [];
  for (const guess of guesses) {
    const error = errorChain(model, knots, guess.sigmaM);
    for (const roughness of model.roughness) {
      levels.push(levelTable(model, knots, wave, error, roughness, roughness.weight * guess.weight));
    }
  }
  return { knots, wave, levels, breaks: knots.count - 2 };
}

function levelTable(
  model: SlopeModel,
  knots: Knots,
  wave: WaveStep,
  error: ErrorChain,
  roughness: Roughness,
  weight: number,
): LevelTable {
  const n = knots.count;
  const stationary = stationaryCovariance(roughness, error, wave, n);
  const whitening = stationary
    ? whitenStationary(stationary, n)
    : whitenDense(wanderCovariance(roughness.kind === 'wander' ? roughness.tanPerRootM : 0, error, knots), n);
  const products = columnProducts(whitening, knots.knotM);
  const [, firstSd] = model.firstTan;
  const hh = products[0] + HEIGHT_PRECISION;
  const hs = products[1];
  const ss = products[n + 1] + 1 / (firstSd * firstSd);
  const det = hh * ss - hs * hs;
  const baseInverse = Float64Array.of(ss / det, -hs / det, hh / det);
  const breaks = n - 2;
  const ramps = new Float64Array(breaks * breaks);
  const baseRamps = new Float64Array(2 * breaks);
  for (let p = 0; p < breaks; p++) {
    const h = products[p + 2];
    const s = products[n + p + 2];
    baseRamps[p] = h;
    baseRamps[breaks + p] = s;
    const ch = baseInverse[0] * h + baseInverse[1] * s;
    const cs = baseInverse[1] * h + baseInverse[2] * s;
    for (let q = 0; q < breaks; q++) {
      ramps[p * breaks + q] = products[(p + 2) * n + q + 2] - ch * products[q + 2] - cs * products[n + q + 2];
    }
  }
  const logConstant = Math.log(weight) - 0.5 * (whitening.logDet + Math.log(det));
  return { roughness, error, whitening, logConstant, ramps, baseRamps, baseInverse };
}

/**
 * Inner products of the whitened columns: start height, first slope, then a ramp from each inner knot; n × n, row-major.
 * A whitened ramp is the second running sum of a whitening row, so each entry costs one addition.
 */
function columnProducts(w: Whitening, knotM: number): Float64Array {
  const { n, band, rows } = w;
  const stride = band + 1;
  const products = new Float64Array(n * n);
  const row = new Float64Array(n);
  for (let k = 0; k < n; k++) {
    let first = 0;
    let second = 0;
    for (let j = 0; j <= k; j++) {
      if (j <= band) first += rows[k * stride + j];
      // ramp from knot k − 1 − j; the ramp from knot 0 is the first slope, column 1
      if (j < k) {
        second += first * knotM;
        row[k - j] = second;
      }
    }
    row[0] = first;
    const used = k + 1;
    for (let a = 0; a < used; a++) {
      const value = row[a];
      const at = a * n;
      for (let b = a; b < used; b++) products[at + b] += value * row[b];
    }
  }
  for (let a = 0; a < n; a++) for (let b = 0; b < a; b++) products[a * n + b] = products[b * n + a];
  return products;
}
