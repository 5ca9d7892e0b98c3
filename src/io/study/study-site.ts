import { localPlane } from '../../geo/index.ts';
import { completeStudy, type GroundWork, type Study, type StudyInputs, workUpGround } from '../../study/index.ts';
import { UserError } from '../../units/index.ts';
import { type ElevationSource, readGround } from '../elevation/index.ts';

/** Everything of a study but its ground, which is read here. */
export type StudyRequest = Omit<StudyInputs, 'ground'>;

/** First window around the site, metres to each side; a fall line is at most 300 m long. */
export const WINDOW_M = 320;
/** Second window, for a fall line that ran out of the first. */
const WIDER_M = 660;
/** An end this near the border of the window may be the window's, not the file's, metres. */
const BORDER_M = 12;

/** Reads the ground around a site and works up the whole study. Throws `UserError` with one sentence. */
export async function studySite(
  sources: readonly ElevationSource[],
  request: StudyRequest,
  signal?: AbortSignal,
): Promise<Study> {
  const work = await groundOfSite(sources, request, signal);
  return completeStudy(work, { ...request, ground: work.ground });
}

/**
 * Reads the ground around a site and works it out, all but layouts and words; reads a second, wider window where the fall line runs out of the
 * first, so that "no data" always means that the file has none. Throws `UserError` with one sentence.
 */
export async function groundOfSite(
  sources: readonly ElevationSource[],
  request: StudyRequest,
  signal?: AbortSignal,
): Promise<GroundWork> {
  const { at } = request;
  if (!sources.some((source) => source.covers(at))) {
    const names = sources.map((source) => source.info.source).join(', ');
    throw new UserError(
      'off-raster',
      `${at.lon}, ${at.lat} (longitude, latitude) lies outside ${names}; give a raster that covers the site.`,
    );
  }
  const plane = localPlane(at);
  const work = async (halfSizeM: number): Promise<GroundWork> => {
    const ground = await readGround(sources, plane, { x: 0, y: 0 }, halfSizeM, signal);
    const result = workUpGround({ ...request, ground });
    if (!result.ok) throw result.error;
    return result.value;
  };
  const first = await work(WINDOW_M);
  return endsWithin(first, WINDOW_M) ? first : work(WIDER_M);
}

/** True where the fall line ends well inside the window around the plane's origin, or of itself. */
export function endsWithin({ side }: GroundWork, halfSizeM: number): boolean {
  const line = side.descent?.line;
  if (line?.why !== 'no data' && line?.why !== 'limit') return true;
  return Math.max(Math.abs(line.end.x), Math.abs(line.end.y)) < halfSizeM - BORDER_M;
}
