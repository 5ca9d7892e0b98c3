import { type Book, changedSince, fieldCheck, live, publishedAddressOf, settingsOf } from '../../book/index.ts';
import { calibrate, mileAt, mileText, type RoadIndex, roadAt, routeThrough, stationOnRoute } from '../../road/index.ts';
import { changedWords, type Study } from '../../study/index.ts';
import { locatorRoads } from './locator.ts';
import type { PlanSheet, SheetCheck, SheetPhoto } from './sheet-types.ts';

/** What a sheet is made with beside the book. */
export interface SheetRequest {
  readonly roads: RoadIndex;
  /** YYYY-MM-DD; what is due is told by it. */
  readonly today: string;
  /** Where the book is published, ending in a slash; null for the address that the book itself gives, if any. */
  readonly address: string | null;
  readonly photos: readonly SheetPhoto[];
}

/** A site's plan sheet from its book: card, check, events since, surveyed places, mile. Null where the book has no such site. */
export function sheetOfBook(book: Book, siteId: string, study: Study, request: SheetRequest): PlanSheet | null {
  const site = live(book, 'sites').find(({ id }) => id === siteId);
  if (!site) return null;
  const settings = settingsOf(book);
  const { latest, inField, dueOn, due } = fieldCheck(
    live(book, 'signOffs'),
    siteId,
    settings?.reviewMonths ?? 12,
    request.today,
  );
  const path = [study.site, ...(study.edge ? [study.edge] : []), ...(study.descent ? [study.descent.end] : [])];
  const changed = changedSince(path, live(book, 'events'), inField?.on ?? null, study.terrain.collectedOn);
  const signed = inField ?? latest;
  return {
    ...{ study, site, photos: request.photos },
    address: request.address ?? publishedAddressOf(book),
    cardLines: live(book, 'cardLines'),
    district: settings?.district ?? '',
    ...alongRoad(book, study, request.roads),
    check: signed ? checkOf(book, signed) : null,
    overdueSince: inField && due ? dueOn : null,
    stops: [
      ...otherRoad(site.roadName, study.site.road.name),
      ...changed.sinceSurvey.map(({ name, on }) => changedWords(name, on)),
      ...changed.sinceElevation
        .filter((event) => !changed.sinceSurvey.includes(event))
        .map(({ name, on }) => `${name}, ${on}: the elevation is older, screening only.`),
    ],
    places: live(book, 'supportPlaces').filter((place) => place.siteId === siteId),
    roads: locatorRoads(request.roads.network, study.site),
  };
}

function checkOf(
  book: Book,
  { siteId, by, role, on, method, conditions }: ReturnType<typeof live<'signOffs'>>[number],
): SheetCheck {
  const readings = live(book, 'measurements').filter((one) => one.siteId === siteId).length;
  return { by, role, on, method, conditions, readings };
}

/** A site whose road has another name in the road file may have been put on another road. */
const otherRoad = (inBook: string | null, inFile: string | null): string[] =>
  inBook === null || inBook === inFile
    ? []
    : [`The book has this site on ${inBook}, the road file says ${inFile ?? 'a road without a name'}: find out which.`];

/**
 * The mile along the road's own markers, where they stand on both sides of the site, and the station on the route as its first way
 * of the file is drawn, so that all sites of a road are counted from one end.
 */
function alongRoad(book: Book, study: Study, roads: RoadIndex): { mile: string | null; alongM: number } {
  const found = roadAt(roads, study.site);
  if (!found.ok) return { mile: null, alongM: 0 };
  const first = Math.min(...found.value.route.legs.map(({ way }) => way));
  const route = routeThrough(roads.network, roads.joins, first);
  const alongM = stationOnRoute(route, study.site).stationM;
  const own = live(book, 'routes').filter(({ name }) => name === route.name);
  const posts = live(book, 'mileMarkers')
    .filter(({ routeId }) => own.some(({ id }) => id === routeId))
    .map(({ post }) => post);
  const mile = mileAt(calibrate(route, posts), alongM);
  return { mile: mile.ok ? mileText(mile.value.mile) : null, alongM };
}
