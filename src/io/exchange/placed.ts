import type { Geometry } from 'geojson';
import { type Book, live, type RecordOf } from '../../book/index.ts';

/** Tables whose records have a place on the map. */
export const placedTables = [
  'sites',
  'marks',
  'supportPlaces',
  'stations',
  'mileMarkers',
  'events',
  'crashes',
] as const;
export type PlacedTable = (typeof placedTables)[number];

/** A record and its shape, WGS 84 longitude, latitude. */
export type Placed = {
  readonly [T in PlacedTable]: { readonly table: T; readonly record: RecordOf<T>; readonly geometry: Geometry };
}[PlacedTable];

/** Which part of a book goes out. */
export interface ExportChoice {
  /** Only these sites with their marks and places; null for the whole book. */
  readonly sites: readonly string[] | null;
  readonly crashes: boolean;
}

/** The records of a book that have a place and go out, table by table, in the order of their ids. Deleted ones stay. */
export function placedRecords(book: Book, { sites, crashes }: ExportChoice): Placed[] {
  const chosen = sites && new Set(sites);
  const isChosen = (siteId: string | null): boolean => !chosen || (siteId !== null && chosen.has(siteId));
  const whole = <T>(records: T[]): T[] => (chosen ? [] : records);
  return [
    ...live(book, 'sites')
      .filter(({ id }) => isChosen(id))
      .map((record) => ({ table: 'sites' as const, record, geometry: point(record.place) })),
    ...live(book, 'marks')
      .filter(({ siteId }) => isChosen(siteId))
      .map((record) => ({ table: 'marks' as const, record, geometry: record.geometry as Geometry })),
    ...live(book, 'supportPlaces')
      .filter(({ siteId }) => isChosen(siteId))
      .map((record) => ({ table: 'supportPlaces' as const, record, geometry: point(record.at) })),
    ...whole(live(book, 'stations')).map((record) => ({
      table: 'stations' as const,
      record,
      geometry: point(record.at),
    })),
    ...whole(live(book, 'mileMarkers')).map((record) => ({
      table: 'mileMarkers' as const,
      record,
      geometry: point(record.post.at),
    })),
    ...whole(live(book, 'events')).map((record) => ({
      table: 'events' as const,
      record,
      geometry: record.area as Geometry,
    })),
    ...(crashes ? whole(live(book, 'crashes')) : []).map((record) => ({
      table: 'crashes' as const,
      record,
      geometry: point(record.at),
    })),
  ];
}

const point = ({ lon, lat }: { lon: number; lat: number }): Geometry => ({ type: 'Point', coordinates: [lon, lat] });

/** A short name for a record on a map, and its kind in the words of the tool. */
export function titleOf({ table, record }: Placed): { name: string; kind: string } {
  switch (table) {
    case 'sites':
      return { name: record.name, kind: 'site' };
    case 'marks':
      return { name: record.name ?? record.kind, kind: record.kind };
    case 'supportPlaces':
      return { name: record.name, kind: record.kind };
    case 'stations':
      return { name: record.name, kind: 'station' };
    case 'mileMarkers':
      return { name: `Mile ${record.post.mile}`, kind: 'mile marker' };
    case 'events':
      return { name: record.name, kind: `${record.kind}, ${record.on}` };
    case 'crashes':
      return { name: `Crash ${record.on}`, kind: record.severity };
  }
}
