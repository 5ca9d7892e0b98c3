import { type CrashRecord, readRecord } from '../../book/index.ts';
import { type DistrictBounds, isInsideBounds, parsePosition } from '../../geo/index.ts';
import { UserError } from '../../units/index.ts';
import { readDay, readDayOrder } from './crash-day.ts';
import { readSeverity, type SeverityWords } from './crash-severity.ts';
import { decodeText } from './decode-text.ts';
import { cellText } from './inert.ts';
import { MOST_ITEMS, type Skipped } from './preview.ts';
import { positionNames } from './read-csv-features.ts';
import { columnOf, readRows } from './read-rows.ts';

/** What a file of crash records would add: day, place and severity of each, and nothing else of what it says. */
export interface CrashPreview {
  readonly crashes: readonly CrashRecord[];
  /** Rows outside the district, by place: not among `crashes` unless somebody says so. */
  readonly outside: readonly { readonly where: string; readonly crash: CrashRecord }[];
  readonly skipped: readonly Skipped[];
  /** What was dropped and how words were taken, for people. */
  readonly remarks: readonly string[];
}

/**
 * Crash records of a delimited table, as a preview; nothing is applied. Columns: date, latitude and longitude (or a position),
 * severity; every other column is dropped here and never kept. Ids are made of what is kept, so that reading a file twice
 * adds nothing. Throws a `UserError` where a column is missing.
 */
export function readCrashes(
  bytes: Uint8Array,
  file: string,
  { bounds, sourceId }: { readonly bounds: DistrictBounds | null; readonly sourceId: string | null },
): CrashPreview {
  const { text } = decodeText(bytes, file);
  const { header, rows } = readRows(text, file);
  if (rows.length > MOST_ITEMS) {
    throw new UserError(
      'crashes-many',
      `${file} has ${rows.length} rows, over the ${MOST_ITEMS} that are read; split it by year.`,
    );
  }
  const columns = {
    on: needed(header, ['date', 'crashdate', 'on', 'day', 'collisiondate', 'datetime', 'crashdatetime'], 'date', file),
    ...placeColumns(header, file),
    severity: needed(
      header,
      ['severity', 'crashseverity', 'injuryseverity', 'collisionseverity', 'kabco', 'maxseverity'],
      'severity',
      file,
    ),
  };
  const cell = (cells: readonly string[], column: number): string => cellText(cells[column]?.trim() ?? '');
  const order = readDayOrder(rows.map(({ cells }) => cell(cells, columns.on)));
  const severities: SeverityWords = readSeverity(rows.map(({ cells }) => cell(cells, columns.severity)));
  const crashes: CrashRecord[] = [];
  const outside: { where: string; crash: CrashRecord }[] = [];
  const skipped: Skipped[] = [];
  const counts = new Map<string, number>();
  for (const { at, cells } of rows) {
    const where = `row ${at}`;
    const on = readDay(cell(cells, columns.on), order.order);
    const place = parsePosition(
      'position' in columns
        ? cell(cells, columns.position)
        : `lat ${cell(cells, columns.lat)} lon ${cell(cells, columns.lon)}`,
    );
    if (on === null || !place.ok) {
      skipped.push({ where, why: on === null ? 'has no date that can be read' : 'has no position that can be read' });
      continue;
    }
    const lon = rounded(place.value.position.lon);
    const lat = rounded(place.value.position.lat);
    const severity = severities.of(cell(cells, columns.severity));
    const key = `${on}-${letters(lat)}-${letters(lon)}-${severity.replace(' ', '-')}`;
    const n = (counts.get(key) ?? 0) + 1;
    counts.set(key, n);
    const crash = readRecord('crashes', { id: `${key}-${n}`, on, at: { lon, lat }, severity, sourceId }, file);
    if (bounds && !isInsideBounds(crash.at, bounds)) outside.push({ where, crash });
    else crashes.push(crash);
  }
  const used = new Set<number>(Object.values(columns));
  const dropped = header.filter((name, i) => !used.has(i) && name !== '');
  const remarks = [
    dropped.length > 0 ? `Dropped and not kept: ${dropped.join(', ').slice(0, 300)}.` : null,
    order.remark,
    ...severities.remarks,
    outside.length > 0
      ? `${outside.length} rows lie outside the district and are left out unless you say otherwise.`
      : null,
  ];
  return { crashes, outside, skipped, remarks: remarks.filter((remark): remark is string => remark !== null) };
}

/** A column each for latitude and longitude, else one for the whole position. */
function placeColumns(header: readonly string[], file: string): { lat: number; lon: number } | { position: number } {
  const lat = columnOf(header, ['lat', 'latitude', 'y', 'latdd']);
  const position = lat < 0 ? columnOf(header, positionNames) : -1;
  if (position >= 0) return { position };
  return {
    lat: lat >= 0 ? lat : needed(header, [], 'lat', file),
    lon: needed(header, ['lon', 'long', 'lng', 'longitude', 'x', 'londd'], 'lon', file),
  };
}

function needed(header: readonly string[], names: readonly string[], name: string, file: string): number {
  const at = columnOf(header, names);
  if (at >= 0) return at;
  const found = header.slice(0, 12).join(', ').slice(0, 120);
  throw new UserError(
    'crash-column',
    `${file} has no column ${name} (found: ${found}); name the columns date, lat, lon, severity.`,
  );
}

/** Six decimals of a degree, 0.1 m: finer than any crash is placed. */
const rounded = (degrees: number): number => Math.round(degrees * 1e6) / 1e6;

/** A coordinate in characters that an id may have. */
const letters = (degrees: number): string => `${degrees < 0 ? 'm' : 'p'}${Math.abs(Math.round(degrees * 1e6))}`;
