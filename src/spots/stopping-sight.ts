import { FOOT_M, toRadians } from '../units/index.ts';

/** Time to see and act, seconds, and deceleration, ft/s² [source: txdot-roadway]. */
const REACTION_S = 2.5;
const DECELERATION_FT = 11.2;
const STANDARD_GRAVITY_FT = 32.2;
/** Published figures are rounded up to this, feet. */
const STEP_FT = 5;

/** Stopping sight distance on the level, metres: 1.47 V t + 1.075 V² / a feet, rounded up to 5 ft [source: txdot-roadway]. */
export const stoppingSightLevelM = (mph: number): number =>
  Math.ceil((reactionFt(mph) + (1.075 * mph * mph) / DECELERATION_FT) / STEP_FT - 1e-9) * STEP_FT * FOOT_M;

/**
 * Stopping sight distance with grade, metres, not rounded: 1.47 V t + V² / (30 (a / 32.2 + G)) feet [source: txdot-roadway].
 * Infinite where the road is too steep to stop on.
 *
 * @param gradeDeg of the road as the driver goes, downhill negative
 */
export function stoppingSightM(mph: number, gradeDeg: number): number {
  const grip = DECELERATION_FT / STANDARD_GRAVITY_FT + Math.tan(toRadians(gradeDeg));
  return grip > 0 ? (reactionFt(mph) + (mph * mph) / (30 * grip)) * FOOT_M : Number.POSITIVE_INFINITY;
}

const reactionFt = (mph: number): number => 1.47 * mph * REACTION_S;
