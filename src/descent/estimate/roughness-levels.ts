import type { ErrorShape, SlopeModel } from './slope-model.ts';

/** Spacing of the knots and the length of the window they serve, metres. */
export interface Knots {
  readonly count: number;
  readonly knotM: number;
  readonly windowM: number;
}

/** One raster error, as a first-order chain between knots. */
export interface ErrorChain {
  readonly variance: number;
  readonly lagOne: number;
}

/** The waves of the model, brought to this spacing: phase per knot (radians), correlation from knot to knot, height scale. */
export interface WaveStep {
  readonly phase: number;
  readonly keep: number;
  readonly heightScale: number;
}

/** The window for which the model's lengths are stated, metres. Longer windows see longer and higher waves alike. */
const MODEL_WINDOW_M = 5;

export function errorChain({ variance, lagOne }: ErrorShape, knots: Knots, sigmaM: number): ErrorChain {
  const step = (knots.knotM * MODEL_WINDOW_M) / knots.windowM;
  return { variance: variance * sigmaM * sigmaM, lagOne: lagOne ** step };
}

export function waveStep(model: SlopeModel, knots: Knots): WaveStep {
  const heightScale = knots.windowM / MODEL_WINDOW_M;
  const step = knots.knotM / heightScale;
  const [length, decay] = model.waveM;
  return { phase: (2 * Math.PI * step) / length, keep: Math.exp(-step / decay), heightScale };
}

/** Covariance by lag of error plus waves of root mean square `rmsM` (0 for none), m². */
export function stationaryCovariance(rmsM: number, error: ErrorChain, wave: WaveStep, count: number): Float64Array {
  const rms = rmsM * wave.heightScale;
  const covariance = new Float64Array(count);
  for (let lag = 0; lag < count; lag++) {
    covariance[lag] = error.variance * error.lagOne ** lag + rms * rms * wave.keep ** lag * Math.cos(wave.phase * lag);
  }
  return covariance;
}

/**
 * Covariance of error plus a wandering slope between knots i ≥ j, m². The slope starts with no departure at knot 0 and gains
 * an independent change at each knot after it, so heights i and j share Σ_m (i−m)(j−m) of them.
 */
export function wanderCovariance(
  tanPerRootM: number,
  error: ErrorChain,
  { knotM }: Knots,
): (i: number, j: number) => number {
  const step = tanPerRootM * tanPerRootM * knotM ** 3;
  return (i, j) => {
    const m = j - 1;
    const shared = m > 0 ? m * j * i - ((i + j) * m * (m + 1)) / 2 + (m * (m + 1) * (2 * m + 1)) / 6 : 0;
    return error.variance * error.lagOne ** (i - j) + step * shared;
  };
}
