import { alongRoads, ROADS_MARGIN_M, ROADS_REACH_M, type RoadAround, roadsAround } from '../../access/index.ts';
import { angleRuleOf, live, marksOf, settingsOf, worseOfContested } from '../../book/index.ts';
import { type LonLat, localPlane } from '../../geo/index.ts';
import { groundOfSite, readGround } from '../../io/index.ts';
import {
  type CallPack,
  type CallSite,
  dropStudiesBut,
  type KeptStore,
  type Weather,
  writeKeptStudy,
  writePack,
} from '../../io/offline/index.ts';
import { type Conditions, fairConditions } from '../../rigging/index.ts';
import { roadAt } from '../../road/index.ts';
import {
  completeStudy,
  fieldOfBook,
  type GroundWork,
  resourcesOfBook,
  type Study,
  shippedResources,
  standUp,
} from '../../study/index.ts';
import type { Ground } from '../../terrain/index.ts';
import { azimuthOf, toRadians, UserError } from '../../units/index.ts';
import { closeAll, type Opener, openDistrict } from '../district.ts';
import { sideOfAsk } from '../side-of-ask.ts';
import { callRoads } from './call-roads.ts';
import type { AroundAnswer, ByRoad, CallOutline, CallSource, CallStudyAsk, NearestSite } from './call-shapes.ts';
import { callSite, listedOfBook, mileOn, type Opened, outlined } from './listed-sites.ts';
import { postsOfBook } from './posts-of-book.ts';

/** Sites that are told with a road edge, at most. */
const TOLD_SITES = 2;

/** Ground kept around a site, metres to each side: for positions up to 100 m from it, the roads 300 m around. */
const KEPT_HALF_M = 500;
/** Tried one after another where the network is away and not all of the ground is kept, metres. */
const SHORTER_REACHES_M = [150, 60];

/** What the call view's worker can be asked. */
export interface CallFunctions {
  /** Opens a district in place of the one before; kept files are taken first unless `keeping`. */
  open(ask: { readonly source: CallSource; readonly keeping: boolean }, signal: AbortSignal): Promise<CallOutline>;
  /** Works a listed site out in one weather and keeps the study with the elevation that it read; the site as the pack lists it. */
  keepSite(ask: { readonly id: string; readonly weather: Weather }, signal: AbortSignal): Promise<CallSite>;
  /** Keeps the ground around a listed site, where its studies come from elsewhere. */
  keepGround(ask: { readonly id: string }, signal: AbortSignal): Promise<void>;
  /** Keeps the pack, once every site is kept. */
  finish(pack: CallPack, signal: AbortSignal): Promise<void>;
  /** A study under conditions, of a site or of any roadside. */
  study(ask: CallStudyAsk, signal: AbortSignal): Promise<Study>;
  /** The roads around a position that lies within a circle of `errorM`. */
  around(ask: { readonly at: LonLat; readonly errorM: number }, signal: AbortSignal): Promise<AroundAnswer>;
  /** The way along the roads from a device to a place; null where the device is on no road, or no road joins them. */
  byRoad(ask: ByRoadAsk, signal: AbortSignal): Promise<ByRoad | null>;
}

export interface ByRoadAsk {
  readonly from: LonLat;
  readonly errorM: number;
  /** True azimuth in which the device moves, degrees; null where it stands. */
  readonly headingDeg: number | null;
  readonly to: LonLat;
}

/** Ahead is told by the way from this far on, metres: more than the noise of a position, less than a bend. */
const ON_M = 40;

/** The functions, with nothing opened yet. `keep` is told whether what is read is to be kept. */
export function callFunctions(opener: Opener, store: KeptStore, keep: (keeping: boolean) => void): CallFunctions {
  let current: Opened | null = null;
  let last: { readonly key: string; readonly work: GroundWork } | null = null;
  const opened = (): Opened => {
    if (!current) throw new UserError('nothing-open', 'No district is open; open the call view again.');
    return current;
  };

  async function study({ at, side: asked, siteId, conditions }: CallStudyAsk, signal: AbortSignal): Promise<Study> {
    const { source, district } = opened();
    const { book, units } = source;
    const place = roadAt(district.roads, at);
    if (!place.ok) throw place.error;
    const road = place.value.route.name;
    const record = book && siteId !== null ? live(book, 'sites').find(({ id }) => id === siteId) : undefined;
    const request = {
      roads: district.roads,
      // The book took the files' marks over and counts from then on.
      marks: book ? marksOf(book, siteId) : district.marks,
      at,
      side: sideOfAsk(asked, at, place.value),
      patient: record?.patientPoint ?? null,
      rule: book ? angleRuleOf(book) : source.rule,
      units,
      conditions,
      patients: record?.patients ?? 1,
      pins: {
        ...(record?.pinnedAnchor ? { anchor: record.pinnedAnchor } : {}),
        ...(record?.pinnedTurn ? { turn: record.pinnedTurn } : {}),
        ...(record?.pinnedBelay ? { belay: record.pinnedBelay } : {}),
      },
      events: book ? live(book, 'events') : [],
      field: book && fieldOfBook(book, siteId, new Date().toISOString().slice(0, 10)),
      resources: book ? resourcesOfBook(book, road) : shippedResources,
    };
    const key = JSON.stringify([at, request.side, siteId]);
    const ground = last?.key === key ? last.work : await groundOfSite(district.sources, request, signal);
    const work = standUp(ground, request);
    last = { key, work };
    return completeStudy(work, { ...request, ground: work.ground });
  }

  const groundWithin = (at: LonLat, halfM: number, signal: AbortSignal): Promise<Ground> =>
    readGround(opened().district.sources, localPlane(at), { x: 0, y: 0 }, halfM, signal);

  /** The ground around a place; without a network as much of it as is kept, and how far that reaches. */
  async function groundAround(at: LonLat, errorM: number, signal: AbortSignal) {
    for (const reachM of [ROADS_REACH_M, ...SHORTER_REACHES_M]) {
      try {
        insideGround(opened(), at, reachM + errorM + ROADS_MARGIN_M);
        return { reachM: reachM + errorM, ground: await groundWithin(at, reachM + errorM + ROADS_MARGIN_M, signal) };
      } catch (error) {
        if (reachM === SHORTER_REACHES_M.at(-1) || !isUnreachable(error)) throw error;
      }
    }
    throw new Error('The last reach neither answered nor failed.');
  }

  return {
    async open({ source: given, keeping }, signal) {
      const source = given.book ? { ...given, book: worseOfContested(given.book) } : given;
      keep(keeping);
      const district = await openDistrict(source.files, opener, signal);
      const { book } = source;
      const { roads, routes, complaints } = callRoads(district.roads, book ? postsOfBook(book) : []);
      const before = current?.district;
      const sites = book ? listedOfBook(book) : [];
      current = { source, district, sites, roads, routes };
      last = null;
      if (before) await closeAll(before.sources);
      const bounds = (book && settingsOf(book)?.bounds) || district.view.elevationBounds;
      const { name, invented, units } = source;
      return {
        pack: { schema: 'brinkbook/call@1', district: name, invented, units, bounds, roads, sites: outlined(current) },
        complaints,
      };
    },
    async keepSite({ id, weather }, signal) {
      const site = opened().sites.find((one) => one.id === id);
      if (!site) throw new UserError('no-site', `The book has no site "${id}".`);
      const at = { lon: site.lon, lat: site.lat };
      const made = await study({ at, side: site.side, siteId: id, conditions: conditionsOf(weather) }, signal);
      await writeKeptStudy(store, id, weather, made);
      // A call's position lies below the site: the ground around it is wanted too.
      if (weather === 'dry') await groundWithin(at, KEPT_HALF_M, signal);
      return callSite(opened(), site, made);
    },
    async keepGround({ id }, signal) {
      const site = opened().sites.find((one) => one.id === id);
      if (site) await groundWithin({ lon: site.lon, lat: site.lat }, KEPT_HALF_M, signal);
    },
    async finish(pack) {
      await dropStudiesBut(store, new Set(pack.sites.map(({ id }) => id)));
      await writePack(store, pack);
      keep(false);
    },
    study,
    async byRoad({ from, errorM, headingDeg, to }) {
      const { roads } = opened().district;
      const place = (at: LonLat) => {
        const found = roadAt(roads, at);
        return found.ok ? { way: found.value.way, stationM: found.value.stationM } : null;
      };
      const [here, there] = [place(from), place(to)];
      if (!here || !there) return null;
      const [alongM] = alongRoads(roads, here, [there]);
      if (alongM === null || alongM === undefined) return null;
      const turn = toRadians(headingDeg ?? 0);
      const on = { x: Math.sin(turn) * ON_M, y: Math.cos(turn) * ON_M };
      const next = headingDeg === null ? null : place(localPlane(from).toLonLat(on));
      const [nextM] = next ? alongRoads(roads, next, [there]) : [null];
      return { alongM, ahead: nextM === null || nextM === undefined ? null : nextM < alongM, errorM };
    },
    async around({ at, errorM }, signal) {
      const { district, sites, roads, routes } = opened();
      const { ground, reachM } = await groundAround(at, errorM, signal);
      const found = roadsAround(ground, district.roads, at, errorM, reachM);
      const placed = sites.flatMap((site) => {
        const place = roadAt(district.roads, site);
        return place.ok ? [{ site, way: place.value.way, stationM: place.value.stationM }] : [];
      });
      const withSites = (road: RoadAround) => {
        const along = alongRoads(district.roads, road, placed);
        const near = placed
          .flatMap(({ site }, i): NearestSite[] => {
            const alongM = along[i]!;
            if (alongM === null) return [];
            const to = localPlane(road.position).toLocal(site);
            return [{ siteId: site.id, alongM, towardDeg: azimuthOf(to.x, to.y) }];
          })
          .sort((a, b) => a.alongM - b.alongM);
        return { ...road, sites: near.slice(0, TOLD_SITES), mile: mileOn(roads, routes, road.roadName, road.position) };
      };
      return {
        ...found,
        above: found.above.map(withSites),
        below: found.below.map(withSites),
        beside: found.beside.map(withSites),
      };
    },
  };
}

/** Throws where the ground of a district that has it around its sites only does not reach: nothing may go unsaid for want of it. */
function insideGround({ source: { groundHalfM }, sites }: Opened, at: LonLat, halfM: number): void {
  if (groundHalfM === undefined) return;
  const { toLocal } = localPlane(at);
  const inside = sites.some((site) => {
    const { x, y } = toLocal(site);
    return Math.max(Math.abs(x), Math.abs(y)) + halfM <= groundHalfM;
  });
  if (inside) return;
  throw new UserError(
    'unreachable',
    'The ground here was not published: it reaches only so far around the surveyed sites. Find the nearest site by its road.',
  );
}

const isUnreachable = (error: unknown): boolean => error instanceof UserError && error.code === 'unreachable';

/** Conditions under which studies are kept: one weather at a time, by day, in calm. */
export const conditionsOf = (weather: Weather): Conditions => ({
  ...fairConditions,
  wet: weather === 'wet',
  ice: weather === 'ice',
});
