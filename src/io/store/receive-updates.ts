import {
  applyUpdate,
  holds,
  isNewer,
  laterTime,
  readUpdate,
  requireSame,
  type Update,
  updateId,
} from '../../book/merge/index.ts';
import { UserError } from '../../units/index.ts';
import type { BookDisk, Meta, World } from './book-disk.ts';
import type { Committed } from './commit-drafts.ts';
import { asNewActor } from './new-meta.ts';
import { keysOf, partialState, touchedRecords } from './partial-state.ts';

/** How many updates were new, how many were known, and how many of the new wait for a newer program. */
export interface Received {
  readonly added: number;
  readonly known: number;
  readonly newer: number;
}

/**
 * Takes updates of other devices into the book: all of them or, where one cannot be used, none. `from` names the file. Where they
 * hold updates of this very device that it does not have (it was restored from a copy, or its profile was copied), it goes on
 * under a new name, so that no number is given twice.
 */
export function receiveUpdates(
  disk: BookDisk,
  world: World,
  given: readonly unknown[],
  from: string,
  blobs: ReadonlyMap<string, Blob> = new Map(),
): Promise<Committed & { readonly received: Received }> {
  const updates = given.map((one) => readUpdate(one, from));
  const keys = keysOf(updates.filter((update) => !isNewer(update)));
  return disk.transact({ records: keys, log: updates.map(updateId) }, (read) => {
    if (!read.meta) throw new UserError('book-gone', 'The book is no longer on this device; load the page again.');
    const state = partialState(read, keys);
    const added = new Map<string, Update>();
    let { last, newer } = read.meta;
    updates.forEach((update, i) => {
      const id = updateId(update);
      if (holds(state.vector, id)) {
        requireSame((read.log[i] ?? added.get(id))!, update, from);
        return;
      }
      if (applyUpdate(state, update, from) === 'newer') newer += 1;
      else last = laterTime(last, update.t, world.now());
      added.set(id, update);
    });
    const foreignSelf = [...added.values()].some(({ actor }) => actor === read.meta!.actor);
    const base = foreignSelf ? asNewActor(read.meta, world) : read.meta;
    const meta: Meta = { ...base, last, newer, vector: state.vector };
    const records = touchedRecords(state);
    const received = { added: added.size, known: updates.length - added.size, newer: newer - read.meta.newer };
    const log = [...added.values()];
    return { write: { meta, records, log, blobs }, answer: { meta, updates: log, records, received } };
  });
}
