import { toDegrees } from '../units/index.ts';
import type { Profile } from './profile.ts';

/** A taut rope in its vertical plane: corners from start to load, metres; where it bears on the ground, and by how much. */
export interface RopeLine {
  readonly lengthM: number;
  readonly cornerDistanceM: Float64Array;
  readonly cornerElevationM: Float64Array;
  /** Corners between the ends with more than 5° of bend. */
  readonly contacts: readonly Contact[];
  /** Sum of all bends at the ground, radians: what the capstan formula takes. */
  readonly wrapRad: number;
}

export interface Contact {
  readonly distanceM: number;
  readonly bendDeg: number;
}

/** What stands on the ground and lifts the rope, such as a barrier: distance from the edge, height above ground, metres. */
export interface RopeRise {
  readonly distanceM: number;
  readonly heightM: number;
}

/** Height of the rope at the litter, metres. */
export const ROPE_AT_LITTER_M = 0.8;
/** Bends up to this are not told as contacts, degrees. */
export const CONTACT_BEND_DEG = 5;

export interface RopeEnds {
  /** Height of the rope above the ground at its start and at the load, metres. */
  readonly startM: number;
  readonly loadM: number;
  /** Ground behind the edge over which the rope also runs: distances negative, ascending. */
  readonly behind?: { readonly distanceM: ArrayLike<number>; readonly elevationM: ArrayLike<number> };
  readonly rises?: readonly RopeRise[];
}

/** From the ground at the edge to the litter. */
export const groundToLitter: RopeEnds = { startM: 0, loadM: ROPE_AT_LITTER_M };

/**
 * The taut rope over a profile: the upper convex hull of the ground between its two ends (weightless rope, no friction in
 * plan), by Andrew's monotone chain [source: andrew1979].
 *
 * ```
 *  start ●───── corner = contact, bends by β
 *        ░░░░░░╲
 *        ░░░░░░░╲──● load, 0.8 m up
 * ```
 */
export function ropeLine(profile: Pick<Profile, 'distanceM' | 'elevationM'>, ends: RopeEnds): RopeLine {
  const { x, z } = hullPoints(profile, ends);
  const hull: number[] = [];
  for (let i = 0; i < x.length; i++) {
    while (hull.length > 1) {
      const a = hull[hull.length - 2];
      const b = hull[hull.length - 1];
      if ((x[b] - x[a]) * (z[i] - z[a]) < (z[b] - z[a]) * (x[i] - x[a])) break;
      hull.pop();
    }
    hull.push(i);
  }
  const contacts: Contact[] = [];
  let lengthM = 0;
  let wrapRad = 0;
  let before = Number.NaN;
  for (let c = 1; c < hull.length; c++) {
    const dx = x[hull[c]] - x[hull[c - 1]];
    const dz = z[hull[c]] - z[hull[c - 1]];
    lengthM += Math.hypot(dx, dz);
    const fall = Math.atan2(-dz, dx);
    if (c > 1) {
      wrapRad += fall - before;
      const bendDeg = toDegrees(fall - before);
      if (bendDeg > CONTACT_BEND_DEG) contacts.push({ distanceM: x[hull[c - 1]], bendDeg });
    }
    before = fall;
  }
  return {
    lengthM,
    cornerDistanceM: Float64Array.from(hull, (i) => x[i]),
    cornerElevationM: Float64Array.from(hull, (i) => z[i]),
    contacts,
    wrapRad,
  };
}

function hullPoints(
  { distanceM, elevationM }: Pick<Profile, 'distanceM' | 'elevationM'>,
  { startM, loadM, behind, rises = [] }: RopeEnds,
): { x: Float64Array; z: Float64Array } {
  const back = behind?.distanceM.length ?? 0;
  const n = back + distanceM.length;
  const x = new Float64Array(n);
  const z = new Float64Array(n);
  for (let i = 0; i < back; i++) {
    x[i] = behind!.distanceM[i];
    z[i] = behind!.elevationM[i];
  }
  x.set(distanceM, back);
  z.set(elevationM, back);
  for (const rise of rises) {
    const i = nearestIndex(x, rise.distanceM);
    z[i] += rise.heightM;
  }
  z[0] += startM;
  z[n - 1] += loadM;
  return { x, z };
}

function nearestIndex(x: Float64Array, at: number): number {
  let best = 0;
  for (let i = 1; i < x.length; i++) if (Math.abs(x[i] - at) < Math.abs(x[best] - at)) best = i;
  return best;
}
