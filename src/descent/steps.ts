import { fallSlope } from './estimate/index.ts';
import type { Hill } from './hill.ts';
import { markedSteps } from './marked-steps.ts';
import { mergeSteps } from './merge-steps.ts';
import type { SlopeSample } from './slope-sample.ts';
import { LEAST_STEP_M, type Step } from './step.ts';
import type { Surroundings } from './surroundings.ts';

/** How much ground on either side those slopes are taken from, and how little of it will do, metres. */
const SIDE_M = 5;
const LEAST_SIDE_M = 2;
const RUN_CELLS = 2;
/** What a raster shows of a step that is spread over its cells, as measured against noise-free ground (no source). */
const SEEN_SHARE = 0.97;
/** A step read this near under the least one is told as the least one, metres: the cautious side of a noisy reading. */
const NEAR_M = 0.1;
/** Samples in a cell. */
const PER_CELL = 2;

/**
 * Steps of the ground, then marked and mapped ones, by distance. The ground's: within two cells it falls 1.5 m or more
 * beyond what the steeper of the slopes of the 5 m above and the 5 m below would fall there, so that a uniform plane of
 * any slope has none. Not sought where the data can only screen.
 */
export function stepsOn(hill: Hill, sample: SlopeSample, around: Surroundings): Step[] {
  const ground = hill.screeningOnly ? [] : groundSteps(sample, hill.cellM);
  return mergeSteps([...ground, ...markedSteps(sample, around)]);
}

function groundSteps(sample: SlopeSample, cellM: number): Step[] {
  const { lengthM } = sample;
  const stepM = cellM / PER_CELL;
  const side = Math.round(SIDE_M / stepM);
  const run = PER_CELL * RUN_CELLS;
  const count = side + Math.ceil(lengthM / stepM) + run + side + 1;
  const height = sample.heights(-side * stepM, stepM, count);
  const distance = Float64Array.from({ length: count }, (_, i) => (i - side) * stepM);
  const steps: Step[] = [];
  let peak = 0;
  let where = 0;
  const tell = (): void => {
    if (peak > 0) steps.push({ distanceM: distance[where], heightM: Math.max(LEAST_STEP_M, peak), source: 'ground' });
    peak = 0;
  };
  for (let i = side; i + run < count && distance[i] < lengthM; i++) {
    const slope = steeperSide(distance, height, i, run, side);
    const excess = (height[i] - height[i + run] - slope * run * stepM) / SEEN_SHARE;
    if (!(excess >= LEAST_STEP_M - NEAR_M)) tell();
    else if (excess > peak) {
      peak = excess;
      where = i;
    }
  }
  tell();
  return steps;
}

/** Steeper of the slopes above point i and below point i + run, tan; missing ground shortens a side or leaves it out. */
function steeperSide(distance: Float64Array, height: Float64Array, i: number, run: number, side: number): number {
  let from = i;
  while (from > i - side && from > 0 && Number.isFinite(height[from - 1])) from--;
  let to = i + run;
  while (to < i + run + side && to + 1 < height.length && Number.isFinite(height[to + 1])) to++;
  const above = distance[i] - distance[from] >= LEAST_SIDE_M ? fallSlope(distance, height, from, i) : 0;
  const below = distance[to] - distance[i + run] >= LEAST_SIDE_M ? fallSlope(distance, height, i + run, to) : 0;
  return Math.max(0, above, below);
}
