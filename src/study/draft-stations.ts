import { placeOfSpotId, type Stations } from '../spots/index.ts';
import type { Study } from './study.ts';

/** Near the site, where a change of direction stands, and farther along the road: a draft looks at one station in so many, metres. */
const NEAR_STEP_M = 2;
const FAR_STEP_M = 6;
const NEAR_M = 12;
/** So many layouts of the newest study lead a draft: each further one brings more places to look at than it betters. */
const LEADERS = 2;

/** What led in the newest study: a point that moves on finds the like near there, or as far from it as it was. */
export interface Led {
  readonly roadId: string;
  readonly siteM: number;
  /** Stations of the spots that its first layouts use, metres. */
  readonly stationsM: readonly number[];
}

/** The places of a study's first layouts. */
export function ledIn({ site, spots, layouts }: Study): Led {
  const used = new Set(
    layouts.slice(0, LEADERS).flatMap(({ anchor, turn, lines }) => [anchor, turn, lines.belay.anchor]),
  );
  const stationsM = spots.filter(({ id }) => used.has(id)).map(({ id }) => placeOfSpotId(id).stationM);
  return { roadId: site.road.id, siteM: site.road.stationM, stationsM: [...new Set(stationsM)] };
}

/** The stations that a draft looks at for a site at `siteM` of a road, metres. */
export function draftStations(roadId: string, siteM: number, led: Led | null): Stations {
  const tried = new Set<number>();
  for (const stationM of led?.roadId === roadId ? led.stationsM : []) {
    for (const like of [stationM, stationM + siteM - led!.siteM]) tried.add(Math.round(like));
  }
  return (stationM) =>
    stationM % (Math.abs(stationM - siteM) <= NEAR_M ? NEAR_STEP_M : FAR_STEP_M) === 0 || tried.has(stationM);
}
