import { currentOps, holds, isNewer, readUpdate, type Update, updateId, type Vector } from '../../book/merge/index.ts';
import type { BookDisk, Meta, World } from './book-disk.ts';
import { receiveUpdates } from './receive-updates.ts';
import type { CopyHolds, Held, SecondCopy } from './second-copy.ts';

const WHERE = 'The second copy on this device';

/** What a copy held of the book when it was opened, and how many updates came back from it. */
export interface CameBack extends CopyHolds {
  readonly updates: number;
}

/** Brings what only the copy has back to the disk. `begun`: the disk was empty, so that the copy's latest other book is what it lost. */
export async function bringBack(
  disk: BookDisk,
  world: World,
  copy: SecondCopy,
  meta: Meta,
  begun: boolean,
): Promise<CameBack> {
  const there = await copy.look((begun && (await copy.latestBeside(meta.book))) || meta.book);
  if (!there) return { book: meta.book, held: [], photos: [], updates: 0 };
  const lost = there.held.some(([actor, from, to]) => {
    for (let n = from; n <= to; n++) if (!holds(meta.vector, updateId({ actor, n }))) return true;
    return false;
  });
  if (!lost && there.book === meta.book) return { ...there, updates: 0 };
  const { updates, blobs } = await copy.read(there.book);
  const usable = updates.flatMap((one) => readable(one, meta));
  const { received } = await receiveUpdates(disk, world, usable, WHERE, blobs);
  // The lost book's own name, so that its other copies know it again.
  await disk.transact({}, (read) => ({ write: { meta: { ...read.meta!, book: there.book } }, answer: null }));
  return { ...there, updates: received.added };
}

/** Brings what only the disk has to the copy; `meta` is the disk's before anything came back. */
export async function bringUp(disk: BookDisk, copy: SecondCopy, meta: Meta, there: CopyHolds): Promise<void> {
  const missing = coversAll(there.held, meta.vector)
    ? []
    : (await disk.readLogFrom()).filter((update) => !covers(there.held, update));
  const photos = await photosBesides(disk, there.photos);
  if (missing.length + photos.size > 0) await copy.append(there.book, missing, photos);
  await copy.tidy(there.book);
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

/** Photos of the disk that the copy lacks: it may have lost one whose update it still has. */
async function photosBesides(disk: BookDisk, there: readonly string[]): Promise<Map<string, Blob>> {
  const known = new Set(there);
  const found = new Map<string, Blob>();
  for (const hash of await disk.blobHashes()) {
    const blob = known.has(hash) ? null : await disk.readBlob(hash);
    if (blob) found.set(hash, blob);
  }
  return found;
}
