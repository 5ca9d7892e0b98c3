import { weightKn } from '../units/index.ts';
import type { Conditions } from './conditions.ts';
import { dot, type PlanVector } from './plan-vector.ts';

export interface HoldSettings {
  /** Share of the weight that stands on braked wheels. */
  readonly brakedShare: number;
  readonly tireFriction: number;
  readonly tireFrictionWet: number;
}

/** Friction of tires on the road; null on ice, where an apparatus is not an anchor. */
export function tireFriction(conditions: Conditions, settings: HoldSettings): number | null {
  if (conditions.ice) return null;
  return conditions.wet ? Math.min(settings.tireFrictionWet, settings.tireFriction) : settings.tireFriction;
}

/**
 * Pull at which a parked apparatus starts to slide, kilonewtons: F = W b μ cos γ braked, W_t = W sin γ along the steepest
 * fall d of the standing ground, and √(F² − W_t²(1 − c²)) − c W_t with c = max(0, u·d), so that a pull up the fall is not
 * credited (statics: friction opposes the sum of pull and weight) [source: derived]. Chocks are not credited.
 *
 * @param emptyMassKg mass without water, people and gear
 * @param fall metres fallen per metre in plan, pointing down: grade and crossfall together
 * @param pull direction in plan towards which the rope pulls
 * @returns 0 where it would not stand by itself
 */
export function holdKn(
  emptyMassKg: number,
  friction: number,
  brakedShare: number,
  fall: PlanVector,
  pull: PlanVector,
): number {
  // γ by its tangent: a search asks for this a hundred thousand times.
  const tan = Math.sqrt(dot(fall, fall));
  const cos = 1 / Math.sqrt(1 + tan * tan);
  const weight = weightKn(emptyMassKg);
  const grip = weight * brakedShare * friction * cos;
  const downhill = weight * tan * cos;
  const size = tan * Math.sqrt(dot(pull, pull));
  const c = size > 0 ? Math.min(1, Math.max(0, dot(pull, fall) / size)) : 0;
  const root = grip * grip - downhill * downhill * (1 - c * c);
  return root > 0 ? Math.max(0, Math.sqrt(root) - c * downhill) : 0;
}
