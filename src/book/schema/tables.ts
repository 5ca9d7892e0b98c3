import type * as v from 'valibot';
import { angleRule } from './angle-rule.ts';
import { apparatus } from './apparatus.ts';
import { arrival } from './arrival.ts';
import { cardLine } from './card-line.ts';
import { correction } from './correction.ts';
import { crash } from './crash.ts';
import { drill } from './drill.ts';
import { event } from './event.ts';
import { kit } from './kit.ts';
import { kitItem } from './kit-item.ts';
import { mark } from './mark.ts';
import { measurement } from './measurement.ts';
import { mileMarker } from './mile-marker.ts';
import { photo } from './photo.ts';
import { rate } from './rate.ts';
import { responseArea } from './response-area.ts';
import { responseRow } from './response-row.ts';
import { rope } from './rope.ts';
import { route } from './route.ts';
import { settings } from './settings.ts';
import { signOff } from './sign-off.ts';
import { site } from './site.ts';
import { source } from './source.ts';
import { station } from './station.ts';
import { supportPlace } from './support-place.ts';

/** Every table of a book with the schema of its records, in the order of the file. */
export const tables = {
  settings,
  sites: site,
  marks: mark,
  measurements: measurement,
  corrections: correction,
  signOffs: signOff,
  photos: photo,
  events: event,
  fleet: apparatus,
  kits: kit,
  ropes: rope,
  kitItems: kitItem,
  stations: station,
  responseAreas: responseArea,
  arrivals: arrival,
  responseRows: responseRow,
  routes: route,
  mileMarkers: mileMarker,
  angleRules: angleRule,
  rates: rate,
  drills: drill,
  cardLines: cardLine,
  supportPlaces: supportPlace,
  sources: source,
  crashes: crash,
} as const;

export type TableName = keyof typeof tables;
export type RecordOf<T extends TableName> = v.InferOutput<(typeof tables)[T]>;
export type AnyRecord = RecordOf<TableName>;
export const tableNames = Object.keys(tables) as TableName[];

export const isTable = (name: string): name is TableName => Object.hasOwn(tables, name);

/** Names of a table's fields, `id` left out, in the order of the file. */
export const fieldsOf = (table: TableName): readonly string[] => fieldNames[table];

const fieldNames = Object.fromEntries(
  tableNames.map((table) => [table, Object.keys(tables[table].entries).filter((field) => field !== 'id')]),
) as unknown as Readonly<Record<TableName, readonly string[]>>;
