import type { PointM } from '../geo/index.ts';
import { type Ground, heightAt, smoothedGradient } from '../terrain/index.ts';

/** A way up: points `stepM` apart, local metres. Ends after the limit, on a summit, or where data end. */
export interface UpSlope {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** Metres between points; the gradient is taken over about three cells. */
const STEP_M = 2;
/** On ground flatter than this (tangent) the way keeps its direction: a road bench or a ledge does not turn it. */
const FLAT = 0.15;
/** A way that has come this much lower than its highest point is over the top, metres. */
const OVER_TOP_M = 3;

/**
 * The way of steepest ascent from a point, straight on over benches and ledges, for at most `limitM` metres. It stands in for
 * where a vehicle came from, which went down about there. A start without data gives no points.
 */
export function upSlope(ground: Ground, start: PointM, limitM: number): UpSlope {
  const x: number[] = [];
  const y: number[] = [];
  const gradient = new Float64Array(2);
  let { x: px, y: py } = start;
  let dx = 0;
  let dy = 0;
  let highest = -Infinity;
  for (let walked = 0; walked <= limitM; walked += STEP_M) {
    const z = heightAt(ground, px, py);
    if (Number.isNaN(z) || z < highest - OVER_TOP_M) break;
    highest = Math.max(highest, z);
    x.push(px);
    y.push(py);
    smoothedGradient(ground, STEP_M, px, py, gradient);
    const slope = Math.hypot(gradient[0]!, gradient[1]!);
    if (slope >= FLAT || (dx === 0 && dy === 0)) {
      if (!(slope > 0)) break;
      dx = gradient[0]! / slope;
      dy = gradient[1]! / slope;
    }
    px += STEP_M * dx;
    py += STEP_M * dy;
  }
  return { x: Float64Array.from(x), y: Float64Array.from(y) };
}
