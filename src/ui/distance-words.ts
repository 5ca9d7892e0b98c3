import { MILE_M } from '../road/index.ts';
import { formatLength, type UnitSystem } from '../units/index.ts';

/** A distance along a road: feet under a fifth of a mile, else miles; metres under 500 m, else kilometres. */
export function distanceWords(metres: number, units: UnitSystem): string {
  if (units === 'us') return metres < MILE_M / 5 ? formatLength(metres, units) : `${(metres / MILE_M).toFixed(1)} mi`;
  return metres < 500 ? formatLength(metres, units) : `${(metres / 1000).toFixed(1)} km`;
}
