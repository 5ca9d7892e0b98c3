import { SIGHT_REACH_M } from '../../road/index.ts';
import type { Study } from '../../study/index.ts';
import { compassWord, formatLength, normaliseAzimuth, type UnitSystem } from '../../units/index.ts';

/** One end of the road as drivers come from it: compass word, what they see, whether that is short; metres. */
export interface Approach {
  readonly from: string;
  readonly sightM: number | null;
  readonly short: boolean;
}

/** Both ends of the road, the one with the shorter sight first; none where no sight was worked out. */
export function approaches(study: Study): Approach[] {
  const { bench, closure, site } = study;
  if (!bench || !closure || bench.stations.length === 0) return [];
  const gap = (stationM: number): number => Math.abs(stationM - site.road.stationM);
  const { azimuthDeg } = bench.stations.reduce((best, each) => (gap(each.stationM) < gap(best.stationM) ? each : best));
  const ends = (['before', 'after'] as const).map((end) => ({
    from: compassWord(end === 'before' ? normaliseAzimuth(azimuthDeg + 180) : azimuthDeg),
    sightM: closure.sightM[end],
    short: closure.short.includes(end),
  }));
  // What is not known is the shortest.
  return ends.sort((a, b) => (a.sightM ?? -1) - (b.sightM ?? -1));
}

/** "190 ft", rounded down, or that it is not known; at the end of what is looked at, that it may be more. */
export const sightWords = (sightM: number | null, units: UnitSystem): string =>
  sightM === null ? 'not known' : `${formatLength(sightM, units, 'down')}${sightM === SIGHT_REACH_M ? ' or more' : ''}`;
