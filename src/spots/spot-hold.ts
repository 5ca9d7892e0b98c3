import type { Apparatus } from '../book/index.ts';
import { type Conditions, dot, type HoldSettings, holdKn, type PlanVector, tireFriction } from '../rigging/index.ts';
import type { Bench } from '../road/index.ts';
import { toRadians } from '../units/index.ts';

/** Fall of the standing ground at an element of the bench, metres per metre, pointing down: grade and crossfall together. */
export function fallAt({ gradeDeg, crossfallDeg, normalX, normalY }: Bench, i: number): PlanVector {
  const climb = Math.tan(toRadians(gradeDeg[i]));
  const across = Math.tan(toRadians(crossfallDeg[i]));
  return { x: climb * normalY[i] + across * normalX[i], y: -climb * normalX[i] + across * normalY[i] };
}

/** The steepest fall among the elements that an apparatus spans; null where one is unknown. */
export function steepestFall(bench: Bench, first: number, last: number): PlanVector | null {
  let steepest: PlanVector | null = null;
  for (let i = first; i <= last; i++) {
    const fall = fallAt(bench, i);
    if (Number.isNaN(fall.x + fall.y)) return null;
    if (steepest === null || dot(fall, fall) > dot(steepest, steepest)) steepest = fall;
  }
  return steepest;
}

/** Hold of an apparatus whichever way it is pulled, kilonewtons: pulled down the fall it holds least. 0 on ice. */
export function leastHoldKn(
  { emptyMassKg }: Pick<Apparatus, 'emptyMassKg'>,
  fall: PlanVector,
  conditions: Conditions,
  settings: HoldSettings,
): number {
  const friction = tireFriction(conditions, settings);
  return friction === null ? 0 : holdKn(emptyMassKg, friction, settings.brakedShare, fall, fall);
}
