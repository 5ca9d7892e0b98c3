import {
  applyUpdate,
  type Draft,
  finish,
  nextTime,
  type RecordState,
  type Update,
  updateId,
} from '../../book/merge/index.ts';
import { UserError } from '../../units/index.ts';
import type { BookDisk, Meta, World } from './book-disk.ts';
import { keysOf, partialState, touchedRecords } from './partial-state.ts';

/** What a transaction left on the disk. */
export interface Committed {
  readonly meta: Meta;
  readonly updates: readonly Update[];
  readonly records: readonly RecordState[];
}

/**
 * Keeps drafts as this device's next updates, all or none: numbers and times are given inside the transaction, so that two tabs
 * never give one twice. Resolves once they are durable.
 */
export function commitDrafts(
  disk: BookDisk,
  world: World,
  drafts: readonly Draft[],
  blobs: ReadonlyMap<string, Blob> = new Map(),
): Promise<Committed> {
  const keys = keysOf(drafts);
  return disk.transact({ records: keys }, (read) => {
    if (!read.meta) throw new UserError('book-gone', 'The book is no longer on this device; load the page again.');
    const state = partialState(read, keys);
    let { next, last } = read.meta;
    const updates = drafts.map((draft): Update => {
      last = nextTime(last, world.now());
      const update = finish(draft, read.meta!.actor, next, last);
      next += 1;
      applyUpdate(state, update, 'This change');
      return update;
    });
    const meta: Meta = { ...read.meta, next, last, vector: state.vector };
    const records = touchedRecords(state);
    return { write: { meta, records, log: updates, blobs }, answer: { meta, updates, records } };
  });
}

/** Ids of what was committed. */
export const committedIds = ({ updates }: Committed): string[] => updates.map(updateId);
