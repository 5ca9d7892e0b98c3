import type { Profile } from './profile.ts';

/** Height of an attendant's eye at the edge, and of the point of the load that must be seen, metres (practice). */
export const EYE_M = 1.7;
export const LOAD_SEEN_M = 1;

/**
 * First distance from the edge, metres, at which ground between hides a load 1 m above ground from an eye 1.7 m above
 * the edge; null where it is seen to the end. Plants are not in the data: at best.
 */
export function sightLost({ distanceM, elevationM }: Pick<Profile, 'distanceM' | 'elevationM'>): number | null {
  const eye = elevationM[0] + EYE_M;
  let skyline = -Infinity;
  for (let i = 1; i < distanceM.length; i++) {
    const toLoad = (elevationM[i] + LOAD_SEEN_M - eye) / distanceM[i];
    if (toLoad < skyline) return distanceM[i];
    skyline = Math.max(skyline, (elevationM[i] - eye) / distanceM[i]);
  }
  return null;
}
