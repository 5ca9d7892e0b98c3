import type { LonLat } from '../types.ts';
import { isInsideBounds, roughM } from './bounds.ts';
import type { Candidate, DistrictBounds } from './reading.ts';

/** Two writings of one place are rounded differently and may come from two maps; farther apart they are two places. */
const SAME_PLACE_M = 50;

export interface Chosen {
  readonly candidate: Candidate;
  /** Other places that the text names. */
  readonly others: readonly LonLat[];
}

/**
 * The position that a text gives: of several writings of one place the finest, of several places the first one inside the
 * district, with the others beside it. Null where there is none.
 */
export function choose(candidates: readonly Candidate[], bounds: DistrictBounds | null): Chosen | null {
  const places: Candidate[] = [];
  for (const candidate of candidates) {
    const at = places.findIndex((place) => isSame(place, candidate));
    if (at < 0) places.push(candidate);
    else if (candidate.withinM < places[at]!.withinM) places[at] = candidate;
  }
  const candidate = (bounds && places.find((place) => isInsideBounds(place.position, bounds))) ?? places[0];
  if (!candidate) return null;
  return { candidate, others: places.filter((place) => place !== candidate).map(({ position }) => position) };
}

const isSame = (a: Candidate, b: Candidate): boolean =>
  roughM(a.position, b.position) <= SAME_PLACE_M + Math.SQRT2 * (a.withinM + b.withinM);
