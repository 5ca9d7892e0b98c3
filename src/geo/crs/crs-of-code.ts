import { UserError } from '../../units/index.ts';
import type { Crs } from './crs.ts';
import type { EpsgTable, Refusal } from './epsg-table.ts';
import { makeCrs, unitOfDefinition } from './make-crs.ts';
import { verticalOfCode } from './vertical.ts';

/**
 * The system of an EPSG code, horizontal or compound; `verticalCode` adds heights to a horizontal one. `source` names the
 * file or option in sentences. Throws `UserError` for codes that are unknown, only vertical, or cannot be used here.
 */
export function crsOfCode(table: EpsgTable, code: number, verticalCode: number | null, source: string): Crs {
  const compound = table.compound(code);
  const flat = compound ? compound.horizontal : code;
  const high = verticalCode ?? compound?.vertical ?? null;
  const row = table.horizontal(flat);
  if (!row) throw unknownCode(table, code, source);
  if (row.refusal) throw refused(flat, row.name, row.refusal, source);
  return makeCrs(row.definition, {
    text: `EPSG:${code}${verticalCode === null ? '' : `+${verticalCode}`}`,
    unitM: unitOfDefinition(row.definition),
    shiftAccuracyM: row.shiftAccuracyM,
    vertical: high === null ? null : verticalOfCode(table, high, source),
  });
}

function unknownCode(table: EpsgTable, code: number, source: string): UserError {
  const vertical = table.vertical(code);
  return vertical
    ? new UserError(
        'crs-vertical',
        `${source} names EPSG:${code} (${vertical.name}), which says how heights count but not where; a horizontal coordinate reference system is needed.`,
      )
    : new UserError(
        'crs-unknown',
        `${source} names EPSG:${code}, which is not in the table of coordinate reference systems; convert the raster with "gdalwarp -t_srs" to one that is, for instance the UTM zone of the place.`,
      );
}

const why: Readonly<Record<Refusal, string>> = {
  grid: 'its shift to WGS 84 needs a grid file that is not carried here',
  shift: 'its shift to WGS 84 is not known to 5 m',
  axes: 'its axes do not point east and north',
  grads: 'it counts angles in grads',
  projection: 'its projection is not known here',
};

function refused(code: number, name: string, refusal: Refusal, source: string): UserError {
  return new UserError(
    'crs-refused',
    `${source} names EPSG:${code}${name ? ` (${name})` : ''}, which cannot be used: ${why[refusal]}; convert the raster with "gdalwarp -t_srs" to a system on WGS 84, for instance the UTM zone of the place.`,
  );
}
