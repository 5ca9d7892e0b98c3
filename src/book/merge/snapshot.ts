import {
  type AnyRecord,
  BOOK_VERSION,
  type Book,
  type BookTables,
  type Contested,
  tableNames,
} from '../schema/index.ts';
import { childrenByOwner } from './children.ts';
import { contestedFields, isDeleted } from './contested.ts';
import type { MergeState } from './merge-state.ts';
import { plainRecord } from './plain-record.ts';
import { type RecordState, recordKey } from './record-state.ts';
import { heads } from './vector.ts';

/**
 * The plain book of a state: the same for every device that holds the same updates. Records that still lack a field that must be
 * there are left out until it comes.
 */
export function snapshotOf(state: MergeState): Book {
  const children = childrenByOwner(state);
  const read: Record<string, unknown[]> = {};
  const contested: Contested[] = [];
  for (const table of tableNames) {
    read[table] = [];
    for (const record of sorted(state.records.get(table)!)) {
      const made = alone.get(record) ?? plainForm(record, children.get(recordKey(table, record.id)) ?? []);
      if (!record.cells.deleted) alone.set(record, made);
      if (!made.plain) continue;
      read[table].push(made.plain);
      contested.push(...made.contested);
    }
  }
  return {
    schema: `brinkbook/book@${BOOK_VERSION}`,
    tables: read as unknown as BookTables,
    contested,
    madeFrom: heads(state.vector).map(([actor, n]) => ({ actor, n })),
  };
}

interface PlainForm {
  readonly plain: AnyRecord | null;
  readonly contested: readonly Contested[];
}

/** Plain forms that hang on their record alone; a record is never changed but replaced. */
const alone = new WeakMap<RecordState, PlainForm>();

const plainForm = (record: RecordState, children: readonly RecordState[]): PlainForm => ({
  plain: plainRecord(record, isDeleted(record, children)),
  contested: contestedFields(record, children).sort((a, b) => (a.field < b.field ? -1 : 1)),
});

const sorted = (records: ReadonlyMap<string, RecordState>): RecordState[] =>
  [...records.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
