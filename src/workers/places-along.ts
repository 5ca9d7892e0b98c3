import type { LonLat } from '../geo/index.ts';
import { type Calibration, calibrate, mileAt, type RoadIndex, type RoadPlace, roadAt } from '../road/index.ts';
import type { RoadPosts } from './call/posts-of-book.ts';

/** Positions, and the mile markers that the book has. */
export interface AlongAsk {
  readonly positions: readonly LonLat[];
  readonly posts: readonly RoadPosts[];
}

/** Where a position lies along its road. */
export interface PlaceAlong {
  /** Which road: the lowest index among its ways. Roads of one name may be several. */
  readonly road: number;
  /** Metres along the road, in the drawing direction of that way; comparable among the positions of one road. */
  readonly m: number;
  /** The mile by the road's own markers; null where they do not stand on both sides. */
  readonly mile: number | null;
}

/** Where each position lies along its road; null where no road is near. */
export function placesAlong(roads: RoadIndex, { positions, posts }: AlongAsk): (PlaceAlong | null)[] {
  const calibrations = new Map<string, Calibration>();
  const calibrationOf = ({ route }: RoadPlace): Calibration => {
    const key = route.legs.map(({ way }) => way).join(' ');
    const known = calibrations.get(key);
    if (known) return known;
    const refs = new Set(route.legs.map(({ way }) => roads.network.ways[way]?.tags.ref ?? null));
    const own = posts.filter(({ road, ref }) => road === route.name || (ref !== null && refs.has(ref)));
    const made = calibrate(
      route,
      own.flatMap((one) => one.posts),
    );
    calibrations.set(key, made);
    return made;
  };
  return positions.map((at) => {
    const found = roadAt(roads, at);
    if (!found.ok) return null;
    const { stationM, route } = found.value;
    const mile = mileAt(calibrationOf(found.value), stationM);
    // A route runs as the way under the point is drawn: what two ways say is told in one direction.
    const first = route.legs.reduce((low, leg) => (leg.way < low.way ? leg : low));
    const m = first.reversed ? route.lengthM - stationM : stationM;
    return { road: first.way, m, mile: mile.ok ? mile.value.mile : null };
  });
}
