import { ASSUMED_LANE_M, type Bench, type RoadTraits } from '../road/index.ts';
import { placePair } from './bench-place.ts';
import { type Footprint, outlineInto, type Points } from './footprint.ts';

/** What a footprint takes of the travelled way. */
export interface LaneUse {
  /** Lanes there are, both directions together. */
  readonly lanes: number;
  /** Lanes that it stands in with any part, counted from the left of the drawing, from 0. */
  readonly taken: readonly number[];
  readonly blocked: number;
  /** What lies between the travelled way's ends, offsets from its middle, metres; null where it stands beside it. */
  readonly takesM: readonly [number, number] | null;
}

const STEP_M = 1;
/** Rounding alone takes no lane, metres. */
const TOUCH_M = 1e-6;

/** Lanes of a road: as tagged, else as many of the assumed width as its carriageway comes nearest to. */
export const laneCount = ({ lanes, carriageway }: Pick<RoadTraits, 'lanes' | 'carriageway'>): number =>
  Math.max(1, Math.round(lanes ?? carriageway.valueM / ASSUMED_LANE_M));

/**
 * Lanes that a footprint, of an apparatus or of a haul corridor (`strip`, 2 m wide), blocks: all that it reaches into.
 * Past the ends of the bench it blocks them all, since nobody can tell.
 *
 * @param from element of the bench near the footprint
 */
export function laneUse(bench: Bench, traits: RoadTraits, footprint: Footprint, from: number): LaneUse {
  // Each point is looked for from the last one's element: they follow each other round the outline.
  let walk = Math.floor(from);
  outlineInto(points, footprint, STEP_M);
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < points.length; k += 2) {
    const placed = placePair(bench, points.xy, k, walk, at);
    const aside = placed ? at[1] - bench.shiftM[Math.round(at[0])] : Number.NaN;
    if (Number.isNaN(aside)) return lanesBetween(traits, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY);
    walk = Math.floor(at[0]);
    least = Math.min(least, aside);
    most = Math.max(most, aside);
  }
  return lanesBetween(traits, least, most);
}

const at = new Float64Array(2);
const points: Points = { xy: new Float64Array(256), length: 0 };

/** Lanes that a stretch across the road reaches into; offsets from the middle of the travelled way, metres, to the right. */
export function lanesBetween(
  traits: Pick<RoadTraits, 'lanes' | 'carriageway'>,
  leastAsideM: number,
  mostAsideM: number,
): LaneUse {
  const lanes = laneCount(traits);
  const half = traits.carriageway.valueM / 2;
  const from = Math.max(-half, leastAsideM);
  const to = Math.min(half, mostAsideM);
  if (!(to - from > TOUCH_M)) return { lanes, taken: [], blocked: 0, takesM: null };
  const width = (2 * half) / lanes;
  const taken: number[] = [];
  for (let k = 0; k < lanes; k++) {
    const left = -half + k * width;
    if (Math.min(to, left + width) - Math.max(from, left) > TOUCH_M) taken.push(k);
  }
  return { lanes, taken, blocked: taken.length, takesM: [from, to] };
}
