import { currentOps, holds, isNewer, readUpdate, type Update, updateId, type Vector } from '../../book/merge/index.ts';
import type { BookDisk, Meta, World } from './book-disk.ts';
import { receiveUpdates } from './receive-updates.ts';
import type { Held, SecondCopy } from './second-copy.ts';

const WHERE = 'The second copy on this device';

/**
 * Brings disk and second copy to hold the same: what only the copy has comes back to the disk, what only the disk has goes to the
 * copy. Returns how many updates came back. `fresh`: the disk was empty, so that the last book of the copy is the one it lost.
 */
export async function reconcile(
  disk: BookDisk,
  world: World,
  copy: SecondCopy,
  meta: Meta,
  fresh: boolean,
): Promise<number> {
  const there = await copy.look(fresh ? null : meta.book);
  const back = there ? await bringBack(disk, world, copy, meta, there) : 0;
  const book = there?.book ?? meta.book;
  const held = there?.held ?? [];
  if (!coversAll(held, meta.vector)) {
    const missing = (await disk.readLogFrom()).filter((update) => !covers(held, update));
    await copy.append(book, missing, await photosOf(disk, missing));
  }
  await copy.tidy(book);
  return back;
}

async function bringBack(
  disk: BookDisk,
  world: World,
  copy: SecondCopy,
  meta: Meta,
  { book, held }: { readonly book: string; readonly held: readonly Held[] },
): Promise<number> {
  const lost = held.some(([actor, from, to]) => {
    for (let n = from; n <= to; n++) if (!holds(meta.vector, updateId({ actor, n }))) return true;
    return false;
  });
  if (!lost) return 0;
  const { updates, blobs } = await copy.read(book);
  const usable = updates.flatMap((one) => readable(one, meta));
  const { received } = await receiveUpdates(disk, world, usable, WHERE, blobs);
  // The lost book's own name, so that its other copies know it again.
  await disk.transact({}, (read) => ({ write: { meta: { ...read.meta!, book } }, answer: null }));
  return received.added;
}

/** An update that the disk lacks, if it can be used; one spoilt line does not keep the rest from coming back. */
function readable(given: unknown, { vector }: Meta): Update[] {
  try {
    const update = readUpdate(given, WHERE);
    if (holds(vector, updateId(update))) return [];
    if (!isNewer(update)) currentOps(update, WHERE);
    return [update];
  } catch {
    return [];
  }
}

const covers = (held: readonly Held[], { actor, n }: Pick<Update, 'actor' | 'n'>): boolean =>
  held.some(([who, from, to]) => who === actor && from <= n && n <= to);

/** True where the pieces hold all of a vector; told from their names, without reading the log. */
function coversAll(held: readonly Held[], vector: Vector): boolean {
  for (const [actor, { upTo, beyond }] of vector) {
    const own = held.filter(([who]) => who === actor).sort((a, b) => a[1] - b[1]);
    let reached = 0;
    for (const [, from, to] of own) if (from <= reached + 1) reached = Math.max(reached, to);
    if (reached < upTo || [...beyond].some((n) => !covers(held, { actor, n }))) return false;
  }
  return true;
}

/** Photos that updates name, as far as the disk has them. */
async function photosOf(disk: BookDisk, updates: readonly Update[]): Promise<Map<string, Blob>> {
  const found = new Map<string, Blob>();
  for (const update of updates) {
    if (isNewer(update)) continue;
    for (const [table, , field, value] of update.ops) {
      if (table !== 'photos' || field !== 'hash' || typeof value !== 'string' || found.has(value)) continue;
      const blob = await disk.readBlob(value);
      if (blob) found.set(value, blob);
    }
  }
  return found;
}
