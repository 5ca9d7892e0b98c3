import { type LonLat, localPlane } from '../../geo/index.ts';
import type { MeasurementRecord } from '../schema/index.ts';

/** Within this of a place a reading was taken there: the width of a road, metres (common practice, no source). */
const HERE_M = 5;

/** How far from a place a reading was taken, metres in plan; null where nobody noted where. */
export function takenAwayM(at: LonLat, reading: Pick<MeasurementRecord, 'at'>): number | null {
  if (reading.at === null) return null;
  const { x, y } = localPlane(at).toLocal(reading.at);
  return Math.hypot(x, y);
}

/** True where it is known that a reading was taken at a place. */
export const takenHere = (at: LonLat, reading: Pick<MeasurementRecord, 'at'>): boolean =>
  (takenAwayM(at, reading) ?? Number.POSITIVE_INFINITY) <= HERE_M;
