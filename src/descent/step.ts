/** A wall, terrace or cliff on the descent: distance from the edge and height, metres. */
export interface Step {
  readonly distanceM: number;
  readonly heightM: number;
  readonly source: 'ground' | 'mark' | 'map';
}

/**
 * Fall beyond what the slopes around would fall, metres: 1.5 m, less the tenth by which cells smear a wall of that height.
 * On simulated hillsides without walls it fires only on waves of 0.3 m.
 */
export const LEAST_STEP_M = 1.35;
