import { csvFormatRows } from 'd3-dsv';
import type { Position } from 'geojson';
import type { Book } from '../../book/index.ts';
import { formatDegreesMinutes, formatUsng } from '../../geo/index.ts';
import { inertCell } from './inert.ts';
import { type ExportChoice, type Placed, placedRecords, titleOf } from './placed.ts';
import { type SiteFacts, siteFacts } from './site-facts.ts';
import { linesOf } from './write-gpx.ts';

/** Columns of the table, in order. `lat` and `lon` of a line or an area are those of its first corner. */
const columns = [
  'table',
  'id',
  'name',
  'kind',
  'lat',
  'lon',
  'shape',
  'usng',
  'degrees_minutes',
  'side_azimuth_deg',
  'road',
  'site_id',
  'patients',
  'patient_lat',
  'patient_lon',
  'radio',
  'last_check_on',
  'last_check_method',
  'changed_since',
  'notes',
] as const;

/**
 * A book's records that have a place, one row each, as CSV [source: rfc4180] in UTF-8 with a byte order mark, which spreadsheets need.
 * No cell is a formula.
 */
export function writeCsv(book: Book, choice: ExportChoice): string {
  const facts = siteFacts(book);
  const rows = placedRecords(book, choice).map((placed) => rowOf(placed, facts));
  const cells = rows.map((row) => columns.map((column) => cell(row[column])));
  return `\uFEFF${csvFormatRows([[...columns], ...cells])}\n`;
}

type Row = { [C in (typeof columns)[number]]?: string | number | null };

const cell = (value: string | number | null | undefined): string =>
  typeof value === 'number' ? String(value) : inertCell(value ?? '');

function rowOf(placed: Placed, facts: ReadonlyMap<string, SiteFacts>): Row {
  const { table, record, geometry } = placed;
  const [lon, lat] = (geometry.type === 'Point' ? geometry.coordinates : linesOf(geometry)[0]![0]!) as Position;
  const { name, kind } = titleOf(placed);
  const row: Row = {
    table,
    id: record.id,
    name,
    kind,
    lat: lat!,
    lon: lon!,
    shape: geometry.type === 'Point' ? 'point' : geometry.type === 'LineString' ? 'line' : 'area',
    usng: formatUsng({ lon: lon!, lat: lat! }),
    degrees_minutes: formatDegreesMinutes({ lon: lon!, lat: lat! }),
    site_id: 'siteId' in record ? record.siteId : null,
    radio: 'radio' in record ? record.radio : null,
    notes: 'notes' in record ? record.notes : null,
  };
  if (table !== 'sites') return row;
  const { check, changed } = facts.get(record.id)!;
  return {
    ...row,
    side_azimuth_deg: record.place.sideAzimuthDeg,
    road: record.roadName,
    patients: record.patients,
    patient_lat: record.patientPoint?.lat ?? null,
    patient_lon: record.patientPoint?.lon ?? null,
    last_check_on: check?.on ?? null,
    last_check_method: check?.method ?? null,
    changed_since: changed.at(-1)?.on ?? null,
  };
}
