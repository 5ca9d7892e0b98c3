import type { AnyRecord, TableName } from '../../book/index.ts';

/** A record as the change that adds it to a book: what the merge composes an edit from. */
export interface AddedRecord {
  readonly table: TableName;
  readonly id: string;
  readonly set: Readonly<Record<string, unknown>>;
}

/**
 * Records that a person chose in a preview, as changes of one edit. Crash records belong in an edit of their own, so that they can be
 * left out of a file: `changesOf('crashes', preview.crashes)`.
 */
export const changesOf = (table: TableName, records: readonly AnyRecord[]): AddedRecord[] =>
  records.map((record) => {
    const { id, ...set } = record as { id: string } & Record<string, unknown>;
    return { table, id, set };
  });
