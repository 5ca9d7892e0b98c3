import { toRadians } from '../units/index.ts';
import { attendantShare, type BootSettings } from './attendant-share.ts';
import type { Conditions } from './conditions.ts';
import type { Load } from './load.ts';

export interface SlopeSettings extends BootSettings {
  /** Friction of the dragged litter on the ground. No published value is known. */
  readonly litterFriction: number;
}

/**
 * Pull along the slope of a litter raised with friction, kilonewtons: W (sin θ + μ cos θ) (statics). Beyond tan θ = 1/μ
 * that falls again; it is held at its largest, so that no tension drops as the angle grows.
 */
function litterPull(litterKn: number, angleDeg: number, friction: number): number {
  const angle = Math.min(toRadians(angleDeg), Math.atan2(1, friction));
  return litterKn * (Math.sin(angle) + friction * Math.cos(angle));
}

/** Pull with the attendants walking, kilonewtons, angle in degrees 0 to 90. Sizes the haul team alone: strength never uses it. */
export const walkingPull = (load: Load, angleDeg: number, conditions: Conditions, settings: SlopeSettings): number =>
  litterPull(load.litterKn, angleDeg, settings.litterFriction) +
  attendantShare(angleDeg, conditions, settings) * load.attendantsKn * Math.sin(toRadians(angleDeg));

/** Pull with every attendant hanging on the line while raising, kilonewtons, angle in degrees 0 to 90. */
export const hangingPull = (load: Load, angleDeg: number, settings: SlopeSettings): number =>
  litterPull(load.litterKn, angleDeg, settings.litterFriction) + load.attendantsKn * Math.sin(toRadians(angleDeg));

/** Pull of the load held on the slope without any friction, kilonewtons: W sin θ. */
export const heldPull = (load: Load, angleDeg: number): number => load.weightKn * Math.sin(toRadians(angleDeg));
