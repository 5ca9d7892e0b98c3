import { type RecordOf, type TableName, tableNames } from './tables.ts';

/** Version of the schema that this program writes. */
export const BOOK_VERSION = 1;
export type BookSchema = `brinkbook/book@${typeof BOOK_VERSION}`;

export type BookTables = { -readonly [T in TableName]: RecordOf<T>[] };

/** One of several values of a field that people gave without knowing of each other. */
export interface ContestedValue {
  readonly value: unknown;
  readonly who: string;
  readonly device: string;
  /** Milliseconds since 1970 by the clock of that device: for the eye, never for an order. */
  readonly atMs: number;
}

/** A field with more than one value; the record carries the first of them until somebody decides. */
export interface Contested {
  readonly table: TableName;
  readonly id: string;
  readonly field: string;
  readonly values: readonly ContestedValue[];
}

/**
 * A whole book, plain: what a reader opens. Records in the order of their ids; deleted ones are among them with
 * `deleted` true, so use `live`. `madeFrom`: how many updates of each device it holds.
 */
export interface Book {
  readonly schema: BookSchema;
  readonly tables: BookTables;
  readonly contested: readonly Contested[];
  readonly madeFrom: readonly { readonly actor: string; readonly n: number }[];
}

/** A book with nothing in it. */
export const emptyBook = (): Book => ({
  schema: `brinkbook/book@${BOOK_VERSION}`,
  tables: Object.fromEntries(tableNames.map((table) => [table, []])) as unknown as BookTables,
  contested: [],
  madeFrom: [],
});

/** The records of a table that are not deleted. */
export const live = <T extends TableName>(book: Book, table: T): RecordOf<T>[] =>
  (book.tables[table] as RecordOf<T>[]).filter(({ deleted }) => !deleted);
