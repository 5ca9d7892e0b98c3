import { SECTION_STEP_M, type Sections } from './sections.ts';

/** Side of the road, as seen along the line: −1 left, +1 right. */
export type SideSign = -1 | 1;

/** Slope across the road up to which ground belongs to the bench (design choice: 12 %). */
export const BENCH_SLOPE = 0.12;

/** Length of either leg of the two-leg line, samples: half a narrow bench; longer would mean less noise. */
const LEG = 8;
/** Shortest outer leg where a section was cut. */
const SHORT_LEG = 4;
/** The search starts this many samples from the centre. */
const FIRST = 2;
/** Evidence saturates here: a sharper break farther down must not win over the first one. */
const SATURATION = 20;
/** Weight of the logarithm that still tells two saturated breaks apart. */
const LOG_WEIGHT = 4;
/** Cost per metre walked over ground that is 10 % over the slope limit. */
const PASSED_COST = 6;
/** Cost per metre beyond the reach of the bench. */
const BEYOND_COST = 20;
/** Farther than this beyond the reach nothing is looked at, samples. */
const PAST_REACH = 6;
/** Samples on which the slope passed is taken, either side. */
const SLOPE_HALF = 2;

/** Filters of the change of slope for outer legs of SHORT_LEG … LEG samples; see `hingeFilter`. */
const filters = Array.from({ length: LEG - SHORT_LEG + 1 }, (_, k) => hingeFilter(LEG, SHORT_LEG + k));

/**
 * Evidence for the end of the bench at every station and distance on one side: `score[i · states + j]` belongs to the
 * distance j samples from the centre line. It is the gain in likelihood of a two-leg line over a straight one, saturating,
 * less a cost for steep ground already passed and for going beyond `reachM`. −∞ where the ground does not say.
 */
export interface EdgeEvidence {
  readonly states: number;
  readonly score: Float64Array;
}

/**
 * `z` are the section's heights without bumps, `noiseM` one sigma of the height error, `reachM` how far from the centre
 * the bench of each station may end.
 */
export function edgeEvidence(
  sections: Sections,
  z: Float64Array,
  side: SideSign,
  noiseM: number,
  reachM: Float64Array,
  states: number,
): EdgeEvidence {
  const { count, half, width } = sections;
  const score = new Float64Array(count * states).fill(Number.NEGATIVE_INFINITY);
  const profile = new Float64Array(half + LEG + 1);
  const passed = new Float64Array(half + 1);
  for (let i = 0; i < count; i++) {
    // The profile runs outward from LEG samples beyond the centre on the other side; index LEG is the centre.
    const start = i * width + half - side * LEG;
    let end = 0;
    for (let k = 0; k < profile.length; k++) {
      const h = z[start + side * k]!;
      profile[k] = h;
      if (!Number.isNaN(h)) end = k;
      else if (k >= LEG) break;
    }
    const last = end - LEG;
    costOfPassing(profile, last, passed);
    const reach = reachM[i]! / SECTION_STEP_M;
    const farthest = Math.min(states - 1, last - SHORT_LEG, Math.ceil(reach + PAST_REACH));
    for (let j = FIRST; j <= farthest; j++) {
      const filter = filters[Math.min(LEG, last - j) - SHORT_LEG]!;
      const { change, slope, variance } = filter;
      let c = 0;
      let outer = 0;
      for (let k = 0; k < change.length; k++) {
        const h = profile[j + k]! - profile[LEG + j]!;
        c += change[k]! * h;
        outer += slope[k]! * h;
      }
      // The ground must leave the bench here: gentle before, over the limit after.
      if (!(Math.abs(outer) > BENCH_SLOPE) || c * outer < 0) continue;
      const gain = (c * c) / (2 * noiseM * noiseM * variance);
      const evidence = SATURATION * (1 - Math.exp(-gain / SATURATION)) + LOG_WEIGHT * Math.log1p(gain);
      const beyond = j > reach ? BEYOND_COST * (j - reach) * SECTION_STEP_M : 0;
      score[i * states + j] = evidence - passed[Math.max(0, j - SLOPE_HALF)]! - beyond;
    }
  }
  return { states, score };
}

/** passed[j]: cost of the ground between the centre and j samples out that is over the slope limit. */
function costOfPassing(profile: Float64Array, last: number, passed: Float64Array): void {
  passed.fill(0);
  for (let j = 1; j <= last; j++) {
    const a = profile[LEG + j - SLOPE_HALF]!;
    const b = profile[LEG + Math.min(last, j + SLOPE_HALF)]!;
    const run = (Math.min(last, j + SLOPE_HALF) - j + SLOPE_HALF) * SECTION_STEP_M;
    const over = Math.abs(b - a) / run - BENCH_SLOPE;
    passed[j] = passed[j - 1]! + (over > 0 ? (over / 0.1) * PASSED_COST * SECTION_STEP_M : 0);
  }
}

/**
 * Weights w with Σ w·z the least-squares change of slope (and outer slope) of a line that may bend at sample `inner` of
 * inner + outer + 1 samples; `variance` is that of the change for unit error. Normal equations of z = a + b·t + c·max(0, t).
 */
function hingeFilter(inner: number, outer: number) {
  const n = inner + outer + 1;
  const rows = Array.from({ length: n }, (_, k) => {
    const t = (k - inner) * SECTION_STEP_M;
    return [1, t, Math.max(0, t)] as const;
  });
  const m = [0, 1, 2].map((p) => [0, 1, 2].map((q) => rows.reduce((sum, r) => sum + r[p]! * r[q]!, 0)));
  const inverse = invert3(m);
  const weights = (p: number): Float64Array =>
    Float64Array.from(rows, (r) => inverse[p]![0]! * r[0] + inverse[p]![1]! * r[1] + inverse[p]![2]! * r[2]);
  const change = weights(2);
  const base = weights(1);
  return { change, slope: change.map((w, k) => w + base[k]!), variance: inverse[2]![2]! };
}

function invert3(m: number[][]): number[][] {
  const [a, b, c] = m[0] as [number, number, number];
  const [d, e, f] = m[1] as [number, number, number];
  const [g, h, i] = m[2] as [number, number, number];
  const det = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  return [
    [(e * i - f * h) / det, (c * h - b * i) / det, (b * f - c * e) / det],
    [(f * g - d * i) / det, (a * i - c * g) / det, (c * d - a * f) / det],
    [(d * h - e * g) / det, (b * g - a * h) / det, (a * e - b * d) / det],
  ];
}
