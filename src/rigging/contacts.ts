import { toDegrees, toRadians } from '../units/index.ts';

/** A place where the rope bends over the ground or an edge; friction null where no protection is named. */
export interface RopeContact {
  readonly bendDeg: number;
  readonly friction: number | null;
}

export interface ContactSettings {
  /** Friction of rope on a bare edge, taken where no protection is named. */
  readonly edgeFriction: number;
}

/** Factor by which friction over a bend raises a tension: e^(μβ), β in radians (capstan equation, Euler) [source: attaway-1999]. */
export const capstanFactor = (friction: number, bendRad: number): number => Math.exp(friction * bendRad);

/** Factor over all contacts between the load and the anchor, 1 or more; a bend under 0 counts as none. */
export function contactsFactor(contacts: readonly RopeContact[], settings: ContactSettings): number {
  let factor = 1;
  for (const { bendDeg, friction } of contacts) {
    factor *= capstanFactor(friction ?? settings.edgeFriction, toRadians(Math.max(0, bendDeg)));
  }
  return factor;
}

/**
 * Bend of the rope at a lip, degrees: the lip's angle less the rope's own fall from its height at the turn or anchor over
 * the plan distance to the edge, both in metres (geometry).
 *
 * ```
 *  ●----___            rope at 0.6 m
 *          ---___
 *  ▒▒▒▒▒▒▒▒▒▒▒▒▒▒●     edge: bend = lip angle − fall of the rope
 *                 ╲
 * ```
 */
export const edgeBend = (lipDeg: number, ropeHeightM: number, toEdgeM: number): number =>
  Math.max(0, lipDeg - toDegrees(Math.atan2(ropeHeightM, toEdgeM)));
