import type { CallRoad } from '../../io/offline/index.ts';
import { calibrate, type RoadIndex, type Route, routeThrough } from '../../road/index.ts';
import type { RoadPosts } from './posts-of-book.ts';

/** The named roads of a network, each joined stretch by itself, with the posts that stand on it; and what is wrong with posts. */
export function callRoads(
  roads: RoadIndex,
  posted: readonly RoadPosts[],
): { readonly roads: CallRoad[]; readonly routes: Route[]; readonly complaints: string[] } {
  const seen = new Set<number>();
  const found: CallRoad[] = [];
  const routes: Route[] = [];
  const complaints: string[] = [];
  roads.network.ways.forEach((way, index) => {
    if (way.name === null || seen.has(index)) return;
    const route = routeThrough(roads.network, roads.joins, index);
    for (const leg of route.legs) seen.add(leg.way);
    const ref = way.tags.ref ?? null;
    const own = posted.filter((one) => one.road === way.name || (ref !== null && one.ref === ref));
    const { name, lengthM, line, stationM } = route;
    const calibration = calibrate(
      route,
      own.flatMap(({ posts }) => posts),
    );
    found.push({ name, ref, lengthM, line: [...line], stationM: [...stationM], calibration });
    routes.push(route);
  });
  for (const { road, ref } of posted) {
    const own = found.filter((one) => one.name === road || (ref !== null && one.ref === ref));
    if (own.length === 0) complaints.push(`The mile markers of ${road} are of no use: the road file has no such road.`);
    for (const off of own[0]?.calibration.off ?? []) {
      const elsewhere = own.some(({ calibration }) => !calibration.off.some(({ mile }) => mile === off.mile));
      if (!elsewhere) complaints.push(`Mile ${off.mile} of ${road} stands ${Math.round(off.awayM)} m off the road.`);
    }
  }
  return { roads: found, routes, complaints };
}
