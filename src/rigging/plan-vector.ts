import { azimuthOf } from '../units/index.ts';

/** A direction or force in plan, x east and y north. */
export interface PlanVector {
  readonly x: number;
  readonly y: number;
}

export const dot = (a: PlanVector, b: PlanVector): number => a.x * b.x + a.y * b.y;

/** Unit vector of a direction; the null vector stays. */
export function unit(v: PlanVector): PlanVector {
  const length = Math.sqrt(v.x * v.x + v.y * v.y);
  return length > 0 ? { x: v.x / length, y: v.y / length } : v;
}

/** True azimuth, degrees, towards which a plan vector points. */
export const towardDeg = (v: PlanVector): number => azimuthOf(v.x, v.y);
