import type { Feature, Geometry } from 'geojson';
import { parsePosition } from '../../geo/index.ts';
import { UserError } from '../../units/index.ts';
import { cellText } from './inert.ts';
import type { Skipped } from './preview.ts';
import { columnOf, readRows } from './read-rows.ts';

const LAT = ['lat', 'latitude', 'latdd', 'ycoord', 'y'];
const LON = ['lon', 'long', 'lng', 'longitude', 'londd', 'xcoord', 'x'];
/** Names of a column that holds a whole position in any usual form. */
export const positionNames = ['position', 'coordinates', 'coords', 'usng', 'mgrs', 'grid', 'location'];

/** Columns that are read beside the position, and the property that each becomes. */
const columns: readonly (readonly [string, readonly string[]])[] = [
  ['name', ['name', 'title', 'label', 'site']],
  ['kind', ['kind', 'type']],
  ['notes', ['notes', 'description', 'desc', 'comment', 'comments']],
  ['sideAzimuthDeg', ['sideazimuthdeg', 'sideazimuth', 'azimuth']],
];

/**
 * Points of a delimited table: a column each for latitude and longitude, or one for the position in any usual form. Rows without
 * a position are skipped by their number; columns that are not read are named.
 */
export function readCsvFeatures(
  text: string,
  file: string,
): { features: { where: string; feature: Feature<Geometry | null> }[]; skipped: Skipped[]; remarks: string[] } {
  const { header, rows } = readRows(text, file);
  const lat = columnOf(header, LAT);
  const lon = columnOf(header, LON);
  const whole = columnOf(header, positionNames);
  const isPair = lat >= 0 && lon >= 0;
  if (!isPair && whole < 0) {
    throw new UserError(
      'csv-position',
      `${file} has no columns lat and lon and no column position; name the columns so (found: ${header.slice(0, 12).join(', ').slice(0, 120)}).`,
    );
  }
  const read = columns
    .map(([property, names]) => [property, columnOf(header, names)] as const)
    .filter(([, at]) => at >= 0);
  const table = columnOf(header, ['table']);
  const shape = columnOf(header, ['shape']);
  const used = new Set([...(isPair ? [lat, lon] : [whole]), table, shape, ...read.map(([, at]) => at)]);
  const unread = header.filter((name, at) => !used.has(at) && name !== '');
  const features: { where: string; feature: Feature<Geometry | null> }[] = [];
  const skipped: Skipped[] = [];
  for (const { at, cells } of rows) {
    const where = `row ${at}`;
    const cell = (column: number): string => cellText(cells[column]?.trim() ?? '');
    const unfit = unfitness(cell(table), cell(shape));
    if (unfit !== null) {
      skipped.push({ where, why: unfit });
      continue;
    }
    const written = isPair ? `lat ${cell(lat)} lon ${cell(lon)}` : cell(whole);
    const swapped = isPair && Math.abs(Number(cell(lat))) > 90;
    const found = parsePosition(swapped ? `${cell(lat)}, ${cell(lon)}` : written);
    if (!found.ok) {
      skipped.push({ where, why: found.error.message });
      continue;
    }
    const { lon: x, lat: y } = found.value.position;
    // Written in the wrong columns: handed on as written, so that the question is asked where the position is judged.
    const coordinates = swapped ? [y, x] : [x, y];
    const properties = Object.fromEntries(
      read.map(([property, column]) => [property, cell(column)]).filter(([, value]) => value !== ''),
    );
    features.push({ where, feature: { type: 'Feature', geometry: { type: 'Point', coordinates }, properties } });
  }
  const remarks = unread.length > 0 ? [`Columns not read: ${unread.join(', ').slice(0, 300)}.`] : [];
  return { features, skipped, remarks };
}

/** Why a row of a table that a book wrote brings nothing: CSV holds one corner of a shape, and not all of every record. */
function unfitness(table: string, shape: string): string | null {
  if (shape === 'line' || shape === 'area')
    return `is ${shape === 'line' ? 'a line' : 'an area'}, of which CSV has one corner; use GeoJSON`;
  return table === '' || table === 'sites' || table === 'marks'
    ? null
    : `is of ${table.slice(0, 40)}, which CSV does not bring; use GeoJSON`;
}
