import { type AdvantageName, idealAdvantage, stagesOf } from './advantage.ts';

export interface ThrowSettings {
  /** Kept free at the turn or the edge, and at the anchor, metres. */
  readonly clearanceNearM: number;
  readonly clearanceAnchorM: number;
}

/** Length of a haul field between its clearances, metres, 0 where nothing is left. */
export const clearField = (fieldM: number, settings: ThrowSettings): number =>
  Math.max(0, fieldM - settings.clearanceNearM - settings.clearanceAnchorM);

/**
 * How far the load moves in one pull, by the clear field in metres: the whole field for a simple system. Of a compound one
 * the stage on the load collapses first, and every later stage must move by the product of the advantages before it:
 * min(H₁′, H₂′ ÷ MA₁, …) with all stages in one field unless their own are given [source: derived].
 */
export function throwByField(name: AdvantageName, clearFieldsM: readonly number[]): number {
  let before = 1;
  let least = Number.POSITIVE_INFINITY;
  const stages = stagesOf(name);
  for (let i = 0; i < stages.length; i++) {
    const clear = clearFieldsM[Math.min(i, clearFieldsM.length - 1)]!;
    least = Math.min(least, clear / before);
    before *= stages[i]!;
  }
  return least;
}

/** Throw that the hauling rope allows, metres, from what is left of it: (n − 1) × throw built in, n × throw on a line of its own. */
export const throwByRope = (name: AdvantageName, builtIn: boolean, ropeLeftM: number): number =>
  Math.max(0, ropeLeftM / (idealAdvantage(name) - (builtIn ? 1 : 0)));

/** Longest throw at which a haul team walks a pull without taking a new grip, metres: room ÷ advantage [source: derived]. */
export const throwByRoom = (name: AdvantageName, walkingRoomM: number): number => walkingRoomM / idealAdvantage(name);
