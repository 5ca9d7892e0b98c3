import type { TableName } from '../../../book/index.ts';

/** How a value of a record is written in a ledger. */
export type CellKind =
  | 'line'
  | 'notes'
  | 'number'
  | 'length'
  | 'mass'
  | 'force'
  | 'day'
  | 'choice'
  | 'choices'
  | 'flag'
  | 'list'
  | 'place'
  | 'area'
  | 'ties'
  | 'one of'
  | 'some of';

/** One column of a ledger: a field of a record, or a part of a field whose parts are one value. */
export interface Column {
  readonly field: string;
  readonly part?: string;
  readonly label: string;
  readonly kind: CellKind;
  /** May be left empty: then the record keeps "nobody said". */
  readonly empty?: true;
  readonly options?: readonly string[];
  /** Whose records "one of" and "some of" choose from. */
  readonly table?: TableName;
  readonly hint?: string;
}

/** The value of a column in a record. */
export function valueIn(record: Readonly<Record<string, unknown>>, { field, part }: Column): unknown {
  const value = record[field];
  return part === undefined ? value : (value as Record<string, unknown> | null | undefined)?.[part];
}

/** The whole field with the column's value in it: what the record is given. */
export function fieldWith(record: Readonly<Record<string, unknown>>, { field, part }: Column, value: unknown): unknown {
  return part === undefined ? value : { ...(record[field] as object | undefined), [part]: value };
}
