import { localPlane } from '../../geo/index.ts';
import { type Bench, type RoadPlace, type Route, roadAt, UNDER } from '../../road/index.ts';
import { type GroundWork, workUpGround } from '../../study/index.ts';
import type { Ground } from '../../terrain/index.ts';
import { type ElevationSource, readGround } from '../elevation/index.ts';
import { endsWithin, groundOfSite, type StudyRequest, WINDOW_M } from './study-site.ts';

/** Ground and road bench around a place, kept for drafts of a point that moves along the road. */
export interface KeptBench {
  readonly ground: Ground;
  readonly bench: Bench;
  readonly place: RoadPlace;
}

/** Farther along the road than this from where it was found a bench is found anew, metres: spots lie 72 m away at most, it reaches 150. */
const KEPT_M = 48;
/** From here on it is worth finding anew before that is needed, metres. */
const AGING_M = 24;

/**
 * The ground work of a draft: on what was kept where the point is still near, a third of the work and within centimetres of
 * `groundOfSite`; else on ground read anew. Throws `UserError` with one sentence.
 */
export async function draftGround(
  sources: readonly ElevationSource[],
  request: StudyRequest,
  kept: KeptBench | null,
): Promise<{ readonly work: GroundWork; readonly kept: KeptBench | null }> {
  const place = roadAt(request.roads, request.at);
  if (!place.ok) throw place.error;
  if (kept && apartM(kept, place.value) <= KEPT_M && hasGround(kept.bench, place.value)) {
    const work = workUpGround({ ...request, ground: kept.ground }, kept.bench);
    if (work.ok && endsWithin(work.value, DRAFT_WINDOW_M)) return { work: work.value, kept };
  }
  const found = await keptBench(sources, request);
  return found ?? { work: await groundOfSite(sources, request), kept: null };
}

/** The window of a draft: what is seen from a place at the end of what is kept lies in it too, metres to each side. */
const DRAFT_WINDOW_M = WINDOW_M + KEPT_M;

/** True where a kept bench should be found anew as soon as nothing else waits. */
export const isAging = (kept: KeptBench, { place }: GroundWork): boolean => apartM(kept, place) > AGING_M;

/** Reads ground and bench around a place; null where a draft needs what `groundOfSite` has. */
export async function keptBench(
  sources: readonly ElevationSource[],
  request: StudyRequest,
): Promise<{ readonly work: GroundWork; readonly kept: KeptBench } | null> {
  if (!sources.some((source) => source.covers(request.at))) return null;
  const ground = await readGround(sources, localPlane(request.at), { x: 0, y: 0 }, DRAFT_WINDOW_M);
  const work = workUpGround({ ...request, ground });
  if (!work.ok || !endsWithin(work.value, DRAFT_WINDOW_M)) return null;
  const { computedBench: bench, place } = work.value;
  return { work: work.value, kept: { ground, bench, place } };
}

/** Metres along the road between a kept bench's place and another; infinite on another road. */
function apartM({ place: { route, stationM } }: KeptBench, other: RoadPlace): number {
  return sameRoute(route, other.route) ? Math.abs(stationM - other.stationM) : Number.POSITIVE_INFINITY;
}

const sameRoute = (a: Route, b: Route): boolean =>
  a.lengthM === b.lengthM && a.legs[0].way === b.legs[0].way && a.legs[0].reversed === b.legs[0].reversed;

function hasGround({ firstStationM, count, under, heightM }: Bench, { stationM }: RoadPlace): boolean {
  const i = Math.round(stationM) - firstStationM;
  return i >= 0 && i < count && (under[i] === UNDER.structure || !Number.isNaN(heightM[i]));
}
