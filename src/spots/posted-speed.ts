import type { RoadTraits } from '../road/index.ts';

/** A posted speed as the published formulas take it: miles an hour, a multiple of five. */
export interface PostedSpeed {
  readonly mph: number;
  readonly how: 'typed' | 'assumed';
}

const KMH_PER_MPH = 1.609344;
const STEP_MPH = 5;
/** Where no speed is tagged: a common limit of open two-lane roads (common practice, no source; high on purpose). */
const ASSUMED_MPH = 55;

/** Posted speed of a road rounded up to 5 mph, assumed where untagged. */
export function postedSpeed({ maxSpeedKmh }: Pick<RoadTraits, 'maxSpeedKmh'>): PostedSpeed {
  if (maxSpeedKmh === null) return { mph: ASSUMED_MPH, how: 'assumed' };
  return { mph: roundUpMph(maxSpeedKmh / KMH_PER_MPH), how: 'typed' };
}

/** Speed rounded up to the next 5 mph, so that between 40 and 45 the longer formula counts. */
export const roundUpMph = (mph: number): number => Math.ceil(mph / STEP_MPH - 1e-9) * STEP_MPH;
