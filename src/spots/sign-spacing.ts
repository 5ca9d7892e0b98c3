import { FOOT_M } from '../units/index.ts';

/** What kind of road the signs stand on. */
export type SignRoad = 'rural' | 'urban low' | 'urban high';

const spacingFt: Record<SignRoad, number> = { rural: 500, 'urban low': 100, 'urban high': 350 };

/**
 * Distances of advance signs, metres: from the start of the taper to the nearest sign, and on to the second and the third
 * [source: mutcd-2003, table 6H-3].
 */
export function signSpacingM(road: SignRoad): readonly [number, number, number] {
  const spacing = spacingFt[road] * FOOT_M;
  return [spacing, spacing, spacing];
}
