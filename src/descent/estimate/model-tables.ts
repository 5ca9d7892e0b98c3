import { columnProducts } from './column-products.ts';
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
import { type Whitening, whitenSettling, whitenStationary } from './whitening.ts';

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
    for (const shape of model.errors) {
      const error = errorChain(shape, knots, guess.sigmaM);
      for (const roughness of model.roughness) {
        levels.push(levelTable(model, knots, wave, error, roughness, roughness.weight * shape.weight * guess.weight));
      }
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
  const whitening =
    roughness.kind === 'wander'
      ? whitenSettling(wanderCovariance(roughness.tanPerRootM, error, knots), n)
      : whitenStationary(stationaryCovariance(roughness.kind === 'waves' ? roughness.rmsM : 0, error, wave, n), n);
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
