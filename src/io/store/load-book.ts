import { BOOK_VERSION } from '../../book/index.ts';
import { applyUpdate, emptyState, isNewer, type MergeState } from '../../book/merge/index.ts';
import { UserError } from '../../units/index.ts';
import type { BookDisk, Meta, World } from './book-disk.ts';
import { newMeta } from './new-meta.ts';
import { touchedRecords } from './partial-state.ts';

/** What a disk held; `fresh` where it held nothing and a book was begun. */
export interface Loaded {
  readonly meta: Meta;
  readonly state: MergeState;
  readonly fresh: boolean;
}

/**
 * The state that a disk holds; an empty disk gets a new book. Records made with an older schema are made anew from the updates,
 * which never change. Throws a `UserError` where a newer program has been at work.
 */
export async function loadBook(disk: BookDisk, world: World): Promise<Loaded> {
  const { meta, records } = await disk.readAll();
  if (!meta) {
    // Another tab may have begun the book in the meantime: then its meta counts.
    const begun = await disk.transact({}, (read) => {
      const made = read.meta ?? newMeta(world);
      return { write: { meta: made }, answer: { made, ours: !read.meta } };
    });
    return begun.ours
      ? { meta: begun.made, state: { ...emptyState(), vector: begun.made.vector }, fresh: true }
      : loadBook(disk, world);
  }
  if (meta.version > BOOK_VERSION) {
    throw new UserError(
      'book-newer',
      `The book on this device is of version ${meta.version}, this program reads up to version ${BOOK_VERSION}; update the program.`,
    );
  }
  if (meta.version < BOOK_VERSION) return rebuild(disk);
  const state: MergeState = { ...emptyState(), vector: meta.vector };
  for (const record of records) state.records.get(record.table)!.set(record.id, record);
  return { meta, state, fresh: false };
}

/** All records from all updates, put in the place of the old ones in one transaction. */
async function rebuild(disk: BookDisk): Promise<Loaded> {
  const log = await disk.readLogFrom();
  const state = emptyState();
  for (const update of log) applyUpdate(state, update, 'This device');
  const meta = await disk.transact({}, ({ meta: old }) => {
    const made: Meta = {
      ...old!,
      version: BOOK_VERSION,
      vector: state.vector,
      newer: log.filter((one) => isNewer(one)).length,
    };
    return { write: { meta: made, records: touchedRecords(state) }, answer: made };
  });
  return { meta, state, fresh: false };
}
