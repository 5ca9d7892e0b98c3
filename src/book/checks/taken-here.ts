import type { LonLat } from '../../geo/index.ts';
import type { MeasurementRecord } from '../schema/index.ts';

/** Within this of a place a reading was taken there: the width of a road, metres (common practice, no source). */
const HERE_M = 5;

/** The longest degree of WGS 84 in either direction (at the poles), metres: no distance comes out too short, by 0.6 % at most too long. */
const LONGEST_DEGREE_M = 111_694;

/** How far from a place a reading was taken, metres in plan; null where nobody noted where. */
export function takenAwayM(at: LonLat, reading: Pick<MeasurementRecord, 'at'>): number | null {
  if (reading.at === null) return null;
  const east = (reading.at.lon - at.lon) * Math.cos((at.lat * Math.PI) / 180);
  // Not the site's plane: the projection would weigh on the first screen.
  return LONGEST_DEGREE_M * Math.hypot(east, reading.at.lat - at.lat);
}

/** True where it is known that a reading was taken at a place. */
export const takenHere = (at: LonLat, reading: Pick<MeasurementRecord, 'at'>): boolean =>
  (takenAwayM(at, reading) ?? Number.POSITIVE_INFINITY) <= HERE_M;
