import { readField, type TableName } from '../../../book/index.ts';
import { type UnitSystem, UserError } from '../../../units/index.ts';
import { cellValue, unitOf } from './cell-text.ts';
import { type Column, fieldWith } from './column.ts';

/** What becomes of a typed cell: the field's new value, or why it is refused, one sentence. */
export type Checked = { readonly value: unknown } | { readonly why: string };

/** Takes what somebody typed through the door of the schema. Nothing is changed. */
export function checkCell(
  table: TableName,
  record: Readonly<Record<string, unknown>> & { readonly id: string },
  column: Column,
  typed: string,
  units: UnitSystem,
): Checked {
  try {
    const value = fieldWith(record, column, cellValue(column, typed, units));
    return { value: readField(table, record.id, column.field, value, column.label) };
  } catch (error) {
    if (!(error instanceof UserError)) throw error;
    const kept = { ft: 'metres', lb: 'kilograms', lbf: 'kilonewtons' }[unitOf(column, units)];
    const inBook = error.code === 'book-field' && kept ? ` The book counts in ${kept}.` : '';
    return { why: `${error.message}${inBook}` };
  }
}
