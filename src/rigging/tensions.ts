import type { Conditions } from './conditions.ts';
import type { Load } from './load.ts';
import { hangingPull, heldPull, type SlopeSettings, walkingPull } from './slope-pull.ts';

/** Where the load may be on its way up: slope angle there, degrees, and the factor of the contacts between it and the anchor. */
export interface LoadPosition {
  readonly angleDeg: number;
  readonly contactsFactor: number;
}

export interface TensionSettings extends SlopeSettings {
  /** The belay is never planned for less, kilonewtons. */
  readonly belayFloorKn: number;
}

export interface Steepness {
  /** Every position that counts; one with the governing angle and all contacts is the plain case. */
  readonly positions: readonly LoadPosition[];
  readonly lipDeg: number;
  /** The belay takes the full weight: planned as high, over a step, or where the book says so. */
  readonly fullBelay: boolean;
}

/** Tensions of the main line at the edge and of the belay, kilonewtons. */
export interface Tensions {
  /** Raising, attendants walking: sizes the haul team alone. */
  readonly walking: number;
  /** Raising, every attendant hanging: what anchors are planned for. */
  readonly hanging: number;
  /** Lowering and on the capture: no friction helps. */
  readonly held: number;
  readonly belay: number;
}

/**
 * The three tensions and the belay's, each the largest over all positions of the load (common practice, no source). None falls
 * as an angle grows. Hanging and held take the steeper of the slope's and the lip's angle.
 */
export function tensions(
  load: Load,
  { positions, lipDeg, fullBelay }: Steepness,
  conditions: Conditions,
  settings: TensionSettings,
): Tensions {
  let walking = 0;
  let hanging = 0;
  let held = 0;
  for (const { angleDeg, contactsFactor } of positions) {
    const steeper = Math.max(angleDeg, lipDeg);
    walking = Math.max(walking, walkingPull(load, angleDeg, conditions, settings) * contactsFactor);
    hanging = Math.max(hanging, hangingPull(load, steeper, settings) * contactsFactor);
    held = Math.max(held, heldPull(load, steeper));
  }
  const belay = Math.max(settings.belayFloorKn, fullBelay ? load.weightKn : held);
  return { walking, hanging, held, belay };
}
