import { ok, type Result, refuse, UserError } from '../../units/index.ts';
import type { Calibration } from './calibrate.ts';
import { noteOf } from './place-of-mile.ts';

/** The mile of a station, and what to tell beside it. */
export interface MileReading {
  readonly mile: number;
  readonly withinM: number;
  readonly note: string | null;
}

/** The mile at a station of a calibrated route; refuses beyond its first and last post. */
export function mileAt({ stretches }: Calibration, stationM: number): Result<MileReading> {
  const stretch = stretches.find(({ fromM, toM }) => stationM >= fromM && stationM <= toM);
  if (!stretch) {
    return refuse(
      new UserError('no-mile', 'No mile markers on both sides of this place, so that it has no mile; use its name.'),
    );
  }
  const { fromM, toM, fromMile, toMile, withinM } = stretch;
  const share = toM > fromM ? (stationM - fromM) / (toM - fromM) : 0;
  return ok({ mile: fromMile + share * (toMile - fromMile), withinM, note: noteOf(stretch) });
}
