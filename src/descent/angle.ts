import type { AngleClass, AngleRule } from '../book/index.ts';
import { toDegrees } from '../units/index.ts';
import { type ClassShares, classShares, namedClass, planAs } from './angle-class.ts';
import {
  angleKnots,
  fallSlope,
  type GoverningAngle,
  governingAngle,
  type ShortSlope,
  shortSlope,
  withoutLast,
} from './estimate/index.ts';
import { windowFor } from './profile.ts';
import type { SlopeSample } from './slope-sample.ts';
import { type WeightShares, weightShares } from './weight-shares.ts';

/** The governing angle of a descent, its class and what to plan on; degrees, metres. */
export interface DescentAngle {
  readonly governingDeg: number;
  readonly governingSigmaDeg: number;
  readonly rangeDeg: readonly [number, number];
  /** The steepest window along the descent, metres from the edge. */
  readonly stretchM: readonly [number, number];
  readonly windowM: number;
  readonly class: AngleClass | 'undecided';
  readonly planAs: AngleClass;
  readonly probability: ClassShares;
  readonly rule: AngleRule;
  readonly weight: WeightShares;
  /** Ground that looks rough at 3 to 10 m: short steeper stretches are possible. */
  readonly rough: boolean;
  /** Number of posts where one line over a short slope is all there is, else null. */
  readonly shortPosts: number | null;
  /** Nobody states the accuracy: the range is estimated from the data and probably too narrow. */
  readonly errorUnknown: boolean;
}

export interface AngleOptions {
  readonly cellM: number;
  /** Vertical error, one sigma, metres; null where unknown. */
  readonly sigmaM: number | null;
  readonly screeningOnly: boolean;
  readonly rule: AngleRule;
  /** A step is on the way: planned as high. */
  readonly step: boolean;
}

/** Samples in a cell along a short slope. */
const SHORT_SAMPLES = 4;
/** Shortest slope that has an angle, metres. */
export const SHORTEST_SLOPE_M = 2;
/** Error taken on a short slope where none is stated, metres at a 5 m window: the largest that is held likely. */
const SHORT_UNKNOWN_SIGMA_M = 0.2;

/** Works out angle and class of a slope; null where it is under 2 m long or its heights are missing. */
export function descentAngle(sample: SlopeSample, options: AngleOptions): DescentAngle | null {
  const { lengthM } = sample;
  if (lengthM < SHORTEST_SLOPE_M - 1e-9) return null;
  const windowM = windowFor(lengthM, options.cellM);
  const knots = angleKnots(lengthM, options.cellM, windowM);
  if (!knots) return shortAngle(sample, options, windowM);
  const heights = sample.heights(0, knots.knotM, knots.count);
  const known = Number.isFinite(heights[knots.count - 1]) ? knots : withoutLast(knots);
  const ground = heights.subarray(0, known.count);
  if (!ground.every(Number.isFinite)) return null;
  const angle = governingAngle(known, ground, options.sigmaM);
  return told(angle, angle.mostChanceFrom, [angle.startM, angle.startM + windowM], windowM, options, {
    rough: angle.rough,
    shortPosts: null,
  });
}

/** One line over a slope too short for more than one window, or over the steepest window of one hardly longer. */
function shortAngle(sample: SlopeSample, options: AngleOptions, windowM: number): DescentAngle | null {
  const { lengthM } = sample;
  const { cellM } = options;
  const intervals = Math.ceil((SHORT_SAMPLES * lengthM) / cellM);
  const stepM = lengthM / intervals;
  const heights = sample.heights(0, stepM, intervals + 1);
  if (!heights.every(Number.isFinite)) return null;
  const span = Math.min(intervals, Math.round(windowM / stepM));
  const from = steepestStart(heights, stepM, span);
  const sigmaM = options.sigmaM ?? (SHORT_UNKNOWN_SIGMA_M * Math.max(windowM, 3 * cellM)) / 5;
  const window = { heightM: heights.slice(from, from + span + 1), stepM, cellM };
  const angle = shortSlope(window, sigmaM);
  const surer = shortSlope(window, sigmaM / 2);
  const most = (limit: number): number => Math.max(angle.chanceFrom(limit), surer.chanceFrom(limit));
  return told(angle, most, [from * stepM, (from + span) * stepM], windowM, options, {
    rough: false,
    shortPosts: Math.floor(lengthM / Math.max(1, cellM)) + 1,
  });
}

function told(
  angle: GoverningAngle | ShortSlope,
  mostChanceFrom: (limitDeg: number) => number,
  stretchM: [number, number],
  windowM: number,
  options: AngleOptions,
  notes: { rough: boolean; shortPosts: number | null },
): DescentAngle {
  const { rule, screeningOnly, step } = options;
  const probability = classShares(angle.chanceFrom, rule);
  const named = namedClass(probability, screeningOnly);
  return {
    governingDeg: angle.medianDeg,
    governingSigmaDeg: angle.sigmaDeg,
    rangeDeg: angle.rangeDeg,
    stretchM,
    windowM,
    class: named,
    planAs: planAs(mostChanceFrom, rule, named, { step, screeningOnly }),
    probability,
    rule,
    weight: weightShares(angle.medianDeg),
    errorUnknown: options.sigmaM === null,
    ...notes,
  };
}

function steepestStart(heights: Float64Array, stepM: number, span: number): number {
  const distance = Float64Array.from(heights, (_, i) => i * stepM);
  let best = 0;
  let most = -Infinity;
  for (let i = 0; i + span < heights.length; i++) {
    const slope = fallSlope(distance, heights, i, i + span);
    if (slope > most) {
      most = slope;
      best = i;
    }
  }
  return best;
}

/** Mean angle of a slope: drop over horizontal length, degrees. */
export const meanAngle = (dropM: number, lengthM: number): number => toDegrees(Math.atan2(dropM, lengthM));
