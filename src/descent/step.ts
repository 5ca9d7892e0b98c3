/** A wall, terrace or cliff on the descent: distance from the edge and height, metres. */
export interface Step {
  readonly distanceM: number;
  readonly heightM: number;
  readonly source: 'ground' | 'mark' | 'map' | 'measured';
}

/** Fall beyond what the slopes around would fall that makes a step, metres. */
export const LEAST_STEP_M = 1.5;
