import type { LonLat } from '../../geo/index.ts';
import type { Study } from '../../study/index.ts';

const METRES_PER_DEGREE = 111_320;

/**
 * The id of the spot of an apparatus parked with its middle at a position, heading `headingDeg` (null: along the road), on the
 * study's stations. Null where the position lies beyond them.
 */
export function spotIdAt({ bench }: Study, apparatus: string, at: LonLat, headingDeg: number | null): string | null {
  const stations = bench?.stations ?? [];
  let best: { id: string; away: number } | null = null;
  for (const { lon, lat, azimuthDeg, stationM } of stations) {
    const east = (at.lon - lon) * METRES_PER_DEGREE * Math.cos((lat * Math.PI) / 180);
    const north = (at.lat - lat) * METRES_PER_DEGREE;
    const [sin, cos] = [Math.sin((azimuthDeg * Math.PI) / 180), Math.cos((azimuthDeg * Math.PI) / 180)];
    const along = east * sin + north * cos;
    const offset = east * cos - north * sin;
    // The nearest station is at most half of the way to the next one off; beyond the ends there is no bench.
    if (Math.abs(along) > 1 || (best && Math.abs(offset) >= best.away)) continue;
    const heading = Math.round(headingDeg ?? azimuthDeg) % 360;
    const decimetres = Math.round(offset * 10);
    best = {
      id: `S:${apparatus}:${Math.round((stationM + along) * 10)}:${decimetres === 0 ? 0 : decimetres}:${heading}`,
      away: Math.abs(offset),
    };
  }
  return best?.id ?? null;
}

/** The apparatus in a spot's id. */
export const apparatusOf = (spotId: string): string => spotId.split(':').slice(1, -3).join(':');

/** The same place and heading for another apparatus. */
export const parkedBy = (apparatus: string, spotId: string): string =>
  ['S', apparatus, ...spotId.split(':').slice(-3)].join(':');

/** Apparatus that the study has spots for: id and name, in the order of its spots. */
export const apparatusIn = ({
  spots,
}: Pick<Study, 'spots'>): readonly { readonly id: string; readonly name: string }[] => [
  ...new Map(spots.map(({ id, apparatus }) => [apparatusOf(id), { id: apparatusOf(id), name: apparatus }])).values(),
];
