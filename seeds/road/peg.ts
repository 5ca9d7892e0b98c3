import type { Grid } from '../../src/terrain/index.ts';
import { toRadians } from '../../src/units/index.ts';
import { splineAt } from '../fields/spline.ts';
import { type Line, lineOf } from './line.ts';

/**
 * One part of a road as it is pegged out: along the hillside on a grade, straight on (over a
 * bridge), or round a bend: `turnDeg` is positive to the left, and after it the heading is kept for `holdM`.
 */
export type PegLeg =
  | { readonly lengthM: number; readonly grade: number; readonly minRadiusM?: number }
  | { readonly straightM: number; readonly grade: number }
  | { readonly bendRadiusM: number; readonly turnDeg: number; readonly grade: number; readonly holdM: number };

export interface PegPlan {
  readonly start: readonly [x: number, y: number];
  readonly azimuthDeg: number;
  readonly legs: readonly PegLeg[];
  /** Height of the first point above the land there, metres. */
  readonly startAboveM?: number;
}

const STEP_M = 2;

/**
 * Lays a road's middle line over the land as a grade line is pegged: where the land turns slower than the tightest bend the
 * line stays on its grade, elsewhere it cuts through noses and bridges hollows. `land` in the CRS of `start`, metres.
 */
export function pegLine(land: Grid, plan: PegPlan): Line {
  const x = [plan.start[0]];
  const y = [plan.start[1]];
  const z = [splineAt(land, x[0], y[0]) + (plan.startAboveM ?? 0)];
  let heading = toRadians(90 - plan.azimuthDeg);
  let hold = 0;
  const advance = (grade: number) => {
    const i = x.length - 1;
    x.push(x[i] + STEP_M * Math.cos(heading));
    y.push(y[i] + STEP_M * Math.sin(heading));
    z.push(z[i] + STEP_M * grade);
  };
  for (const leg of plan.legs) {
    if ('bendRadiusM' in leg) {
      const angle = toRadians(leg.turnDeg);
      const steps = Math.round((Math.abs(angle) * leg.bendRadiusM) / STEP_M);
      for (let k = 0; k < steps; k++) {
        heading += angle / steps / 2;
        advance(leg.grade);
        heading += angle / steps / 2;
      }
      hold = leg.holdM;
      continue;
    }
    if ('straightM' in leg) {
      for (let k = 0; k < leg.straightM / STEP_M; k++) advance(leg.grade);
      continue;
    }
    const most = STEP_M / (leg.minRadiusM ?? 40);
    for (let k = 0; k < leg.lengthM / STEP_M; k++) {
      if (hold > 0) hold -= STEP_M;
      else {
        const i = x.length - 1;
        const wanted = gradeHeading(land, x[i], y[i], z[i], leg.grade, heading);
        heading += Math.max(-most, Math.min(most, angleBetween(heading, wanted)));
      }
      advance(leg.grade);
    }
  }
  const line = lineOf(x, y);
  line.z.set(z);
  return line;
}

/** Heading, radians from east, that follows the grade and leads back to the line's own height on the land. */
function gradeHeading(land: Grid, x: number, y: number, z: number, grade: number, heading: number): number {
  const ahead = 14;
  const ax = x + ahead * Math.cos(heading);
  const ay = y + ahead * Math.sin(heading);
  const d = 6;
  const gx = (splineAt(land, ax + d, ay) - splineAt(land, ax - d, ay)) / (2 * d);
  const gy = (splineAt(land, ax, ay + d) - splineAt(land, ax, ay - d)) / (2 * d);
  const steep = Math.max(0.08, Math.hypot(gx, gy));
  const uphill = Math.atan2(gy, gx);
  const off = (splineAt(land, ax, ay) - (z + ahead * grade)) / steep;
  const correction = Math.max(-0.6, Math.min(0.6, off / 30));
  const climb = Math.asin(Math.max(-0.9, Math.min(0.9, grade / steep)));
  const left = uphill - Math.PI / 2 + climb - correction;
  const right = uphill + Math.PI / 2 - climb + correction;
  return Math.abs(angleBetween(heading, left)) < Math.abs(angleBetween(heading, right)) ? left : right;
}

function angleBetween(from: number, to: number): number {
  const turn = (to - from) % (2 * Math.PI);
  if (turn > Math.PI) return turn - 2 * Math.PI;
  return turn < -Math.PI ? turn + 2 * Math.PI : turn;
}
