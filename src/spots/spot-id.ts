import type { Bench } from '../road/index.ts';
import { UserError } from '../units/index.ts';

/** Where a spot is, as its id says it: metres to the decimetre, true azimuth to the tenth of a degree. */
export interface SpotPlace {
  readonly apparatusId: string;
  readonly stationM: number;
  /** From the line as drawn, positive to the right. */
  readonly offsetM: number;
  readonly headingDeg: number;
}

/** Id of a spot: `S:<apparatus>:<station dm>:<offset dm>:<heading>`. */
export function spotId({ apparatusId, stationM, offsetM, headingDeg }: SpotPlace): string {
  const offset = Math.round(offsetM * 10);
  const heading = (Math.round(headingDeg * 10) / 10) % 360;
  return `S:${apparatusId}:${Math.round(stationM * 10)}:${offset === 0 ? 0 : offset}:${heading}`;
}

/** Reads an id back. Throws a `UserError` where the text is none. */
export function placeOfSpotId(id: string): SpotPlace {
  const match = /^S:(.+):(-?\d+):(-?\d+):(\d{1,3}(?:\.\d)?)$/.exec(id);
  if (!match || Number(match[4]) >= 360) {
    throw new UserError(
      'spot-id',
      `"${id}" is no spot id; expected S:<apparatus>:<station dm>:<offset dm>:<heading>, as a study lists them.`,
    );
  }
  const [, apparatusId, station, offset, heading] = match;
  return {
    apparatusId: apparatusId!,
    stationM: Number(station) / 10,
    offsetM: Number(offset) / 10,
    headingDeg: Number(heading),
  };
}

/** The point of the local plane that a place stands for, written to `out`; false where the bench does not reach. */
export function pointOfPlace(
  { x, y, normalX, normalY, count, firstStationM }: Bench,
  { stationM, offsetM }: Pick<SpotPlace, 'stationM' | 'offsetM'>,
  out: Float64Array,
): boolean {
  const s = stationM - firstStationM;
  if (!(s >= 0 && s <= count - 1)) return false;
  const i = Math.min(count - 2, Math.floor(s));
  const t = s - i;
  const nx = normalX[i] + t * (normalX[i + 1] - normalX[i]);
  const ny = normalY[i] + t * (normalY[i + 1] - normalY[i]);
  const scale = offsetM / Math.hypot(nx, ny);
  out[0] = x[i] + t * (x[i + 1] - x[i]) + scale * nx;
  out[1] = y[i] + t * (y[i + 1] - y[i]) + scale * ny;
  return true;
}
