import { type Book, fieldCheck, live } from '../../book/index.ts';
import type { LonLat } from '../../geo/index.ts';
import type { CallSite } from '../../io/offline/index.ts';
import { sheetOfBook } from '../../plan/index.ts';
import { mileAt, type Route, roadAt, stationOnRoute } from '../../road/index.ts';
import type { Study } from '../../study/index.ts';
import type { District } from '../district.ts';
import type { SideAsked } from '../side-of-ask.ts';
import type { CallRoad, CallSource } from './call-shapes.ts';

/** A site as the book has it. */
export interface Listed extends LonLat {
  readonly id: string;
  readonly name: string;
  readonly road: string | null;
  readonly side: SideAsked;
  readonly sideAzimuthDeg: number;
}

/** A district as it was opened last. */
export interface Opened {
  readonly source: CallSource;
  readonly district: District;
  readonly sites: readonly Listed[];
  readonly roads: readonly CallRoad[];
  readonly routes: readonly Route[];
}

/** A place this near to a road belongs to it when a site's mile is told, metres. */
const ON_ROAD_M = 60;

/** A sheet of which only the stops are read. */
const plainSheet = { today: '9999-12-31', address: null, photos: [] };

/** The sites of a book. */
export function listedOfBook(book: Book): Listed[] {
  return live(book, 'sites').map(({ id, name, place, roadName }) => ({
    id,
    name,
    lon: place.lon,
    lat: place.lat,
    road: roadName,
    side: { azimuthDeg: place.sideAzimuthDeg },
    sideAzimuthDeg: place.sideAzimuthDeg,
  }));
}

/** The sites before they are worked out: by road, then along it. */
export function outlined(all: Opened): CallSite[] {
  const order = ({ road, stationM }: CallSite): string => `${road ?? '~'} ${String(stationM ?? 1e9).padStart(16, '0')}`;
  const sites = all.sites.map((site) => callSite(all, site, null));
  return sites.sort((a, b) =>
    a.road === b.road ? (a.stationM ?? 1e9) - (b.stationM ?? 1e9) : order(a) < order(b) ? -1 : 1,
  );
}

/** A site as the pack lists it; without its study only where it lies is told. */
export function callSite({ source, district, roads, routes }: Opened, site: Listed, study: Study | null): CallSite {
  const place = roadAt(district.roads, site);
  const name = (place.ok ? place.value.route.name : null) ?? site.road;
  const index = nearestRoute(routes, name, site);
  const stationM = index < 0 ? null : stationOnRoute(routes[index]!, site).stationM;
  const mile = index < 0 || stationM === null ? null : mileAt(roads[index]!.calibration, stationM);
  const { book } = source;
  const checked = book ? fieldCheck(book.tables.signOffs, site.id, 12, '9999-12-31').inField : null;
  return {
    id: site.id,
    name: site.name,
    lon: site.lon,
    lat: site.lat,
    road: name,
    stationM,
    mile: mile?.ok ? mile.value.mile : null,
    mileNote: mile?.ok ? mile.value.note : null,
    sideAzimuthDeg: study?.site.sideAzimuthDeg ?? site.sideAzimuthDeg,
    elevationM: study?.edge?.elevationM ?? null,
    planAs: study?.angle?.planAs ?? null,
    undecided: study?.angle?.class === 'undecided',
    checkedOn: checked?.on ?? study?.check?.on ?? null,
    stops: (book && study && sheetOfBook(book, site.id, study, { ...plainSheet, roads: district.roads })?.stops) || [],
  };
}

/** Index of the route of a name that passes nearest to a place; −1 where none comes near. */
function nearestRoute(routes: readonly Route[], name: string | null, at: LonLat): number {
  let best = -1;
  let least = ON_ROAD_M;
  routes.forEach((route, i) => {
    if (route.name !== name) return;
    const { awayM } = stationOnRoute(route, at);
    if (awayM < least) [best, least] = [i, awayM];
  });
  return best;
}

/** The mile of a place on a road by its posts; null where the road has none, or none near enough. */
export function mileOn(
  roads: readonly CallRoad[],
  routes: readonly Route[],
  name: string | null,
  at: LonLat,
): number | null {
  const i = nearestRoute(routes, name, at);
  if (i < 0) return null;
  const found = mileAt(roads[i]!.calibration, stationOnRoute(routes[i]!, at).stationM);
  return found.ok ? found.value.mile : null;
}
