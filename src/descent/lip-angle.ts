import { toDegrees } from '../units/index.ts';
import { fallSlope } from './estimate/index.ts';
import type { Behind, Profile } from './profile.ts';

/** Length of the fits on either side of the edge, metres; two points at least where cells are coarse. */
const FIT_M = 3;

/**
 * Change of slope at the edge, degrees: angle of the 3 m below it less that of the 3 m behind it, falling positive.
 * A shorter descent is used whole. Where nothing is known behind the edge the bench is taken as level.
 */
export function lipAngle(profile: Profile, behind: Behind): number {
  const below = fitted(profile.distanceM, profile.elevationM);
  const distance = [0, ...behind.distanceM.map((d) => -d)];
  const height = [profile.elevationM[0], ...behind.elevationM];
  const bench = distance.length > 1 ? -fitted(distance, height) : 0;
  return below - bench;
}

function fitted(distanceM: ArrayLike<number>, heightM: ArrayLike<number>): number {
  let to = 1;
  while (to + 1 < distanceM.length && distanceM[to + 1] <= FIT_M + 1e-9) to++;
  return toDegrees(Math.atan(fallSlope(distanceM, heightM, 0, to)));
}
