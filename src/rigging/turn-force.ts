import { type PlanVector, unit } from './plan-vector.ts';

/** Force in plan: size in kilonewtons, direction as a unit vector (null vector where the size is 0). */
export interface PlanForce {
  readonly kn: number;
  readonly toward: PlanVector;
}

/** Force on a change of direction by the angle between its legs, radians: √(T₁² + T₂² + 2 T₁T₂ cos φ) [source: derived]. */
export const resultantKn = (t1Kn: number, t2Kn: number, betweenRad: number): number =>
  Math.sqrt(Math.max(0, t1Kn * t1Kn + t2Kn * t2Kn + 2 * t1Kn * t2Kn * Math.cos(betweenRad)));

/**
 * Force on whatever a bent line pulls at, |T₁u₁ + T₂u₂|, with its direction; u₁ and u₂ point from the bend along its legs.
 * In a turned haul T₁ and T₂ are the main line's tensions on both sides of the sheave, never the hand pull.
 */
export function turnForce(t1Kn: number, leg1: PlanVector, t2Kn: number, leg2: PlanVector): PlanForce {
  const u1 = unit(leg1);
  const u2 = unit(leg2);
  const x = t1Kn * u1.x + t2Kn * u2.x;
  const y = t1Kn * u1.y + t2Kn * u2.y;
  const kn = Math.sqrt(x * x + y * y);
  return { kn, toward: kn > 0 ? { x: x / kn, y: y / kn } : { x: 0, y: 0 } };
}
