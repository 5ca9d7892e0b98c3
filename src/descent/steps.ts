import type { DescentLine } from './descent-line.ts';
import { fallSlope } from './estimate/index.ts';
import type { Hill } from './hill.ts';
import { distanceToLine, segmentMeets } from './shapes.ts';
import type { MarkedDrop, Surroundings } from './surroundings.ts';

/** A wall, terrace or cliff on the descent: distance from the edge and height, metres. */
export interface Step {
  readonly distanceM: number;
  readonly heightM: number;
  readonly source: 'ground' | 'mark' | 'map';
}

/** Fall beyond what the slopes around would fall, metres; how much ground on either side they are taken from. */
const LEAST_EXCESS_M = 1.5;
const SIDE_M = 5;
const RUN_CELLS = 2;
/** Marks set as points count when this near, metres; a marked drop without a height is told as the least that counts. */
const POINT_WITHIN_M = 3;

/**
 * Steps of the ground, then marked and mapped ones, by distance. The ground's: within two cells it falls 1.5 m or more
 * beyond what the steeper of the slopes of the 5 m above and the 5 m below would fall there, so that a uniform plane of
 * any slope has none. Not sought where the data can only screen.
 */
export function stepsOn(hill: Hill, line: DescentLine, around: Surroundings): Step[] {
  const marked = around.drops.flatMap((drop) => markedStep(line, drop));
  const ground = hill.screeningOnly ? [] : groundSteps(hill, line);
  return [...ground, ...marked].sort((a, b) => a.distanceM - b.distanceM);
}

function groundSteps(hill: Hill, line: DescentLine): Step[] {
  const { start, direction, lengthM } = line;
  const stepM = hill.cellM / 2;
  const side = Math.round(SIDE_M / stepM);
  const run = 2 * RUN_CELLS;
  const before = side;
  const count = before + Math.ceil(lengthM / stepM) + run + side + 1;
  const height = new Float64Array(count);
  hill.heights(
    start.x - direction.x * before * stepM,
    start.y - direction.y * before * stepM,
    direction.x * stepM,
    direction.y * stepM,
    count,
    height,
    0,
  );
  const distance = Float64Array.from({ length: count }, (_, i) => (i - before) * stepM);
  const steps: Step[] = [];
  let peak = 0;
  let where = 0;
  const flush = (): void => {
    if (peak > 0) steps.push({ distanceM: Math.max(0, distance[where]), heightM: peak, source: 'ground' });
    peak = 0;
  };
  for (let i = before; i + run < count && distance[i] < lengthM; i++) {
    const slope = steeperSide(distance, height, i, run, side);
    const excess = height[i] - height[i + run] - slope * run * stepM;
    if (excess < LEAST_EXCESS_M) flush();
    else if (excess > peak) {
      peak = excess;
      where = i;
    }
  }
  flush();
  return steps;
}

/** Steeper of the slopes above point i and below point i + run, tan; missing ground shortens a side, and two metres of it are needed. */
function steeperSide(distance: Float64Array, height: Float64Array, i: number, run: number, side: number): number {
  let from = i;
  while (from > i - side && from > 0 && Number.isFinite(height[from - 1])) from--;
  let to = i + run;
  while (to < i + run + side && to + 1 < height.length && Number.isFinite(height[to + 1])) to++;
  const above = distance[i] - distance[from] >= 2 ? fallSlope(distance, height, from, i) : 0;
  const below = distance[to] - distance[i + run] >= 2 ? fallSlope(distance, height, i + run, to) : 0;
  return Math.max(0, above, below);
}

function markedStep({ start, end, direction, lengthM }: DescentLine, drop: MarkedDrop): Step[] {
  const heightM = drop.heightM ?? LEAST_EXCESS_M;
  if (drop.line.length === 2) {
    const [x, y] = drop.line;
    const along = (x - start.x) * direction.x + (y - start.y) * direction.y;
    const near = distanceToLine(Float64Array.of(start.x, start.y, end.x, end.y), x, y) <= POINT_WITHIN_M;
    return near ? [{ distanceM: Math.min(lengthM, Math.max(0, along)), heightM, source: drop.source }] : [];
  }
  return segmentMeets(drop.line, start.x, start.y, end.x, end.y).map((t) => ({
    distanceM: t * lengthM,
    heightM,
    source: drop.source,
  }));
}
