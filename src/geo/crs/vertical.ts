import { UserError, type VerticalUnit } from '../../units/index.ts';
import type { VerticalCrs } from './crs.ts';
import type { EpsgTable } from './epsg-table.ts';

const known: readonly string[] = ['m', 'ft', 'us-ft'];

/**
 * The vertical system of an EPSG code, or null for a code that is not in the table (its unit is then not known).
 * Throws `UserError` for depths and for units other than metres and the two feet. `source` names the file.
 */
export function verticalOfCode(table: EpsgTable, code: number, source: string): VerticalCrs | null {
  const row = table.vertical(code);
  if (!row) return null;
  if (!row.up) {
    throw new UserError(
      'depths',
      `${source} gives depths (EPSG:${code}, ${row.name}), heights were expected; turn their sign in the file first.`,
    );
  }
  if (!known.includes(row.unit)) {
    throw new UserError(
      'vertical-unit-unknown',
      `${source} states its heights in another unit than metres or feet (EPSG:${code}, ${row.unit}); convert the file to metres first.`,
    );
  }
  return { unit: row.unit as VerticalUnit, datum: row.name };
}
