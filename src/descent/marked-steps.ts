import { segmentMeets } from './shapes.ts';
import type { SlopeSample } from './slope-sample.ts';
import { LEAST_STEP_M, type Step } from './step.ts';
import type { MarkedDrop, Surroundings } from './surroundings.ts';

/** Marks set as points count when this near to the way, metres. */
const POINT_WITHIN_M = 3;

/** Marked and mapped walls, cliffs and steps that the way crosses; one without a height is told as the least that counts. */
export function markedSteps(sample: SlopeSample, around: Surroundings): Step[] {
  return around.drops.flatMap((drop) => {
    const heightM = drop.heightM ?? LEAST_STEP_M;
    const distances = drop.line.length === 2 ? pointDistance(sample.points, drop) : meetings(sample.points, drop);
    return distances.map((distanceM) => ({ distanceM, heightM, source: drop.source }));
  });
}

function meetings(points: Float64Array, { line }: MarkedDrop): number[] {
  const found: number[] = [];
  let before = 0;
  for (let i = 0; i + 3 < points.length; i += 2) {
    const [ax, ay, bx, by] = points.subarray(i, i + 4);
    const length = Math.hypot(bx - ax, by - ay);
    for (const t of segmentMeets(line, ax, ay, bx, by)) found.push(before + t * length);
    before += length;
  }
  return found;
}

function pointDistance(points: Float64Array, { line: [x, y] }: MarkedDrop): number[] {
  let before = 0;
  let best = POINT_WITHIN_M;
  let distance = -1;
  for (let i = 0; i + 3 < points.length; i += 2) {
    const [ax, ay, bx, by] = points.subarray(i, i + 4);
    const length = Math.hypot(bx - ax, by - ay);
    const along = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length;
    const at = Math.min(length, Math.max(0, along));
    const off = Math.hypot(ax + (at * (bx - ax)) / length - x, ay + (at * (by - ay)) / length - y);
    if (off <= best) {
      best = off;
      distance = before + at;
    }
    before += length;
  }
  return distance < 0 ? [] : [distance];
}
