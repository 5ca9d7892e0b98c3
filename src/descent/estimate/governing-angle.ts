import type { AngleKnots } from './angle-knots.ts';
import { type AngleDraws, drawAngles, quantile, shareFrom } from './draw-angles.ts';
import type { ErrorGuess } from './model-tables.ts';
import type { Knots } from './roughness-levels.ts';
import { type SlopeModel, slopeModel } from './slope-model.ts';
import { windowFinder } from './steepest-window.ts';
import { keptTables } from './table-store.ts';
import { sharpened } from './unseen.ts';

/** The steepest window of a descent with its uncertainty; degrees, falling positive. */
export interface GoverningAngle {
  /** Median, with the stated error. */
  readonly medianDeg: number;
  readonly sigmaDeg: number;
  /** Outer 5 and 95 % of both runs: what is printed. */
  readonly rangeDeg: readonly [number, number];
  /** Chance that the angle is at or over a limit, with the stated error: what is shown. */
  chanceFrom(limitDeg: number): number;
  /** The larger and the smaller such chance of both runs: what is planned on, never shown. */
  mostChanceFrom(limitDeg: number): number;
  /** Start of the window that is steepest most often, metres from the first knot. */
  readonly startM: number;
  /** True where waves of 0.1 m and more are the likelier reading of the heights. */
  readonly rough: boolean;
}

/** Errors held possible where nobody states one, as multiples of 0.10 m at a 5 m window. */
const UNKNOWN_SIGMA_M = 0.1;
const unknownMultiples = [
  [0.5, 0.25],
  [1, 0.35],
  [2, 0.25],
  [3, 0.15],
] as const;
/** No raster shows a hillside better than this, whatever it states: the finest bumps 12 m beside roads on open lidar, metres. */
const HILLSIDE_SIGMA_M = 0.035;
/** The second run takes half the error, but never less than good lidar has, metres. */
const LEAST_SIGMA_M = 0.03;

/**
 * Estimates the steepest window from heights at knots (metres, finite, from the edge on). `sigmaM` is the raster's vertical
 * error, one sigma, or null where unknown. Overstating the error is not cautious, it explains real steepness away: so a
 * second run takes half of it, and planning takes the worse of both.
 */
export function governingAngle(
  knots: AngleKnots,
  heightM: Float64Array,
  sigmaM: number | null,
  model: SlopeModel = slopeModel,
): GoverningAngle {
  const ground = sharpened(heightM);
  const findSteepest = windowFinder(knots);
  const [stated, half] = errorRuns(sigmaM, knots).map((guesses) =>
    drawAngles(model, keptTables(model, lengthOf(knots), guesses), findSteepest, ground),
  ) as [AngleDraws, AngleDraws];
  const medianDeg = quantile(stated.sortedDeg, 0.5);
  return {
    medianDeg,
    sigmaDeg: spread(stated.sortedDeg),
    rangeDeg: [
      Math.min(quantile(stated.sortedDeg, 0.05), quantile(half.sortedDeg, 0.05)),
      Math.max(quantile(stated.sortedDeg, 0.95), quantile(half.sortedDeg, 0.95)),
    ],
    chanceFrom: (limit) => shareFrom(stated.sortedDeg, limit),
    mostChanceFrom: (limit) => Math.max(shareFrom(stated.sortedDeg, limit), shareFrom(half.sortedDeg, limit)),
    startM: (likeliestStart(stated.startCounts) / 2) * knots.knotM,
    rough: stated.roughShare > 0.5,
  };
}

/** The errors of the two runs: as stated, or all that are held possible; then half. */
export function errorRuns(sigmaM: number | null, knots: Knots): [readonly ErrorGuess[], readonly ErrorGuess[]] {
  if (sigmaM !== null) {
    const stated = Math.max(sigmaM, HILLSIDE_SIGMA_M);
    const half = Math.max(stated / 2, LEAST_SIGMA_M);
    return [[{ sigmaM: stated, weight: 1 }], [{ sigmaM: half, weight: 1 }]];
  }
  const base = (UNKNOWN_SIGMA_M * knots.windowM) / 5;
  return [
    unknownMultiples.map(([multiple, weight]) => ({ sigmaM: multiple * base, weight })),
    [{ sigmaM: base / 2, weight: 1 }],
  ];
}

/** What tables depend on: not where the last window ends. */
const lengthOf = ({ count, knotM, windowM }: Knots): Knots => ({ count, knotM, windowM });

function spread(sorted: Float64Array): number {
  let mean = 0;
  for (const a of sorted) mean += a;
  mean /= sorted.length;
  let square = 0;
  for (const a of sorted) square += (a - mean) ** 2;
  return Math.sqrt(square / (sorted.length - 1));
}

/** Half knot whose windows, with those half a knot to either side, were steepest most often. */
function likeliestStart(counts: Int32Array): number {
  let best = 0;
  let most = -1;
  for (let i = 0; i < counts.length; i++) {
    const sum = 2 * counts[i] + (counts[i - 1] ?? 0) + (counts[i + 1] ?? 0);
    if (sum > most) {
      most = sum;
      best = i;
    }
  }
  return best;
}
