import type { Geometry } from 'geojson';
import { type Book, recordedMarkKinds } from '../../src/book/index.ts';
import { geodesicM, type LonLat } from '../../src/geo/index.ts';
import { UserError } from '../../src/units/index.ts';
import type { SiteRow } from './plain-files.ts';

/** Records as a file holds them, before the book's door has filled in what may be missing. */
export type Records = Record<string, unknown>[];

/** How far from a site a mark still belongs to it, metres. */
const REACH_M = 90;

const types: Readonly<Record<string, string>> = {
  'kettle-bend': 'bend',
  'split-oak': 'turnout',
  'lower-elbow': 'switchback',
  'two-legs': 'switchback',
  'bridge-head': 'bridge end',
  'hatbox-corner': 'bend',
};

interface Feature {
  readonly id: string;
  readonly properties: Readonly<Record<string, unknown>>;
  readonly geometry: Geometry;
}

/** Sites, each with the patient point that was marked below it. */
export function siteRecords(rows: readonly SiteRow[], marks: readonly Feature[]): Records {
  const patients = marks.filter(({ properties }) => properties.kind === 'patient point');
  return rows.map(({ id, name, lon, lat, sideAzimuthDeg, road, character }) => ({
    id,
    name,
    place: { lon, lat, sideAzimuthDeg },
    roadName: road,
    type: types[id] ?? 'straight',
    notes: `Here because: ${character}.`,
    patientPoint: patients.map(firstCorner).find((at) => nearest(rows, at)?.id === id) ?? null,
  }));
}

/** Marks, each with the site that it lies near, if it lies near one. */
export const markRecords = (rows: readonly SiteRow[], marks: readonly Feature[]): Records =>
  marks
    .filter(({ properties }) => recordedMarkKinds.some((kind) => kind === properties.kind))
    .map((mark) => ({
      ...mark.properties,
      geometry: mark.geometry,
      siteId: nearest(rows, firstCorner(mark))?.id ?? null,
    }));

/** Places to leave vehicles. */
export const placeRecords = (rows: readonly SiteRow[], parking: readonly Feature[]): Records =>
  parking.map((place) => ({
    id: place.id,
    siteId: nearest(rows, firstCorner(place))?.id ?? null,
    kind: 'staging',
    name: place.properties.name,
    at: firstCorner(place),
    vehicles: place.properties.vehicles,
  }));

/** Areas that changed, as events. */
export const eventRecords = (changes: readonly Feature[]): Records =>
  changes.map(({ id, properties, geometry }) => ({
    id,
    name: 'Slip below Lantern Creek Road',
    kind: 'slide',
    area: geometry,
    on: properties.since,
    notes: properties.note,
  }));

/** Routes and their mile markers. */
export function routeRecords(
  roads: readonly { road: string; points: { mile: number; lon: number; lat: number }[] }[],
): {
  routes: Records;
  mileMarkers: Records;
} {
  const idOf = (road: string): string => road.toLowerCase().replaceAll(' ', '-');
  return {
    routes: roads.map(({ road }) => ({ id: idOf(road), name: road })),
    mileMarkers: roads.flatMap(({ road, points }) =>
      points.map(({ mile, lon, lat }) => ({
        id: `${idOf(road)}-${mile}`,
        routeId: idOf(road),
        post: { mile, at: { lon, lat } },
      })),
    ),
  };
}

/** The district's box: every site, a kilometre around. */
export function districtBounds(rows: readonly SiteRow[]): NonNullable<Book['tables']['settings'][number]['bounds']> {
  const lons = rows.map(({ lon }) => lon);
  const lats = rows.map(({ lat }) => lat);
  return {
    west: Math.min(...lons) - 0.0125,
    south: Math.min(...lats) - 0.009,
    east: Math.max(...lons) + 0.0125,
    north: Math.max(...lats) + 0.009,
  };
}

function nearest(rows: readonly SiteRow[], at: LonLat): SiteRow | null {
  const far = rows.map((row) => ({ row, m: geodesicM(row, at) })).sort((a, b) => a.m - b.m)[0];
  return far && far.m <= REACH_M ? far.row : null;
}

function firstCorner({ geometry }: Feature): LonLat {
  const list = 'coordinates' in geometry ? (geometry.coordinates as unknown[]).flat(3) : [];
  const [lon, lat] = list as number[];
  if (typeof lon !== 'number' || typeof lat !== 'number')
    throw new UserError('demo', 'A mark of the demo has no place.');
  return { lon, lat };
}
