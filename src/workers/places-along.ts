import type { LonLat } from '../geo/index.ts';
import { type Calibration, calibrate, mileAt, type RoadIndex, type RoadPlace, roadAt } from '../road/index.ts';
import type { RoadPosts } from './call/read-posts.ts';

/** Positions, and the mile markers that the book has. */
export interface AlongAsk {
  readonly positions: readonly LonLat[];
  readonly posts: readonly RoadPosts[];
}

/** Where a position lies along its road. */
export interface PlaceAlong {
  /** Metres along the road as it is drawn; comparable among the positions of one road. */
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
    const { stationM } = found.value;
    const mile = mileAt(calibrationOf(found.value), stationM);
    return { m: stationM, mile: mile.ok ? mile.value.mile : null };
  });
}
