import { type Book, type TableName, tableNames } from '../../../book/index.ts';
import { applyUpdate, type Change, composeDraft, emptyState, finish, type Update } from '../../../book/merge/index.ts';

/** Who a log begins with. `actor` is a new random id of this copy of the book; `atMs` the device's clock. */
export interface LogStart {
  readonly actor: string;
  readonly who: string;
  readonly device: string;
  readonly atMs: number;
}

/**
 * The log of a book that has none, such as a reading copy or records made elsewhere: one update a table, so that crash records
 * stand in one of their own. Contested values are not in it: the record's first value counts.
 */
export function logOfBook(book: Book, { actor, who, device, atMs }: LogStart): Update[] {
  const state = emptyState();
  const updates: Update[] = [];
  for (const table of tableNames) {
    const draft = composeDraft(state, changesOf(book, table), { who, device, label: `Took over ${inWords(table)}` });
    if (!draft) continue;
    const update = finish(draft, actor, updates.length + 1, [atMs, updates.length]);
    applyUpdate(state, update, device);
    updates.push(update);
  }
  return updates;
}

/** "mileMarkers" as "mile markers". */
const inWords = (table: TableName): string => table.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

const changesOf = (book: Book, table: TableName): Change[] =>
  book.tables[table].map((record) => {
    const { id, ...set } = record as { id: string } & Record<string, unknown>;
    return { table, id, set };
  });
