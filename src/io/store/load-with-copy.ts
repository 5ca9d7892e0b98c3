import type { BookDisk, DiskRead, World } from './book-disk.ts';
import type { CopyKeeper } from './copy-keeper.ts';
import { type Loaded, loadBook } from './load-book.ts';
import { asNewActor } from './new-meta.ts';
import { bringBack, bringUp } from './reconcile.ts';

/** Loads the book of a disk once disk and second copy hold the same; `recovered`: how many updates came back from the copy. */
export async function loadWithCopy(
  disk: BookDisk,
  world: World,
  keeper: CopyKeeper,
): Promise<{ readonly loaded: Loaded; readonly recovered: number }> {
  const loaded = await loadBook(disk, world);
  if (!world.copy) return { loaded, recovered: 0 };
  const { meta, fresh } = loaded;
  const begun = fresh || meta.begunUnasked === true;
  const back = await keeper.attempt((copy) => bringBack(disk, world, copy, meta, begun));
  if (back) {
    if (meta.begunUnasked) await disk.transact({}, asked);
    await keeper.attempt((copy) => bringUp(disk, copy, meta, back));
    return { loaded: back.updates > 0 ? await loadBook(disk, world) : loaded, recovered: back.updates };
  }
  // A copy that could not be asked may hold updates that this disk has lost, or a whole book: their numbers are not given again, and
  // the next start asks anew. Where the disk is too full for that, it is for edits too.
  await disk
    .transact({}, ({ meta }) => ({
      write: meta ? { meta: { ...asNewActor(meta, world), begunUnasked: begun } } : {},
      answer: null,
    }))
    .catch(() => undefined);
  return { loaded: await loadBook(disk, world), recovered: 0 };
}

const asked = ({ meta }: DiskRead) => ({ write: { meta: { ...meta!, begunUnasked: false } }, answer: null });
