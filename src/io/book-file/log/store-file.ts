import { heads, snapshotOf, type Update } from '../../../book/merge/index.ts';
import type { OpenBook, Received } from '../../store/index.ts';
import type { Asked } from '../left-out.ts';
import type { BookFile } from '../read-book-file.ts';
import { writeBookFile } from '../write-book-file.ts';
import { checkLog } from './check-log.ts';
import { logLines } from './log-lines.ts';
import { readLog, stateOf } from './read-log.ts';

/**
 * A book file that was made from the book of this device, and what it holds: for `noteCopyLeft` once it is off the device. `held` is
 * empty where something was left out: such a file is no backup.
 */
export interface CopyOfBook {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly held: readonly (readonly [actor: string, n: number])[];
}

/** What of a book goes into a file, and when that is by the device's clock. */
export interface CopyOptions {
  readonly asked: Asked;
  /** A reading copy leaves the history behind. */
  readonly content: 'whole' | 'reading copy';
  readonly writtenAtMs: number;
}

/**
 * A file of this device's book: every edit and every photo, crash records and photos that show a patient only where asked for. Throws
 * a `UserError` where the book is over what a file may hold.
 */
export const fileOfBook = async (book: OpenBook, options: CopyOptions): Promise<CopyOfBook> =>
  fileOfUpdates(await book.updates(), (hash) => book.photo(hash), options);

/** The same from the updates of a book and its photos by hash, for a worker. */
export async function fileOfUpdates(
  all: readonly Update[],
  photo: (hash: string) => Promise<Blob | null>,
  { asked, content, writtenAtMs }: CopyOptions,
): Promise<CopyOfBook> {
  const log = content === 'whole' ? logLines(all, asked) : null;
  const state = stateOf(log === null ? all : readLog(log, 'This book').values(), 'This book');
  const bytesOf = async (hash: string): Promise<Uint8Array<ArrayBuffer> | null> => {
    const blob = await photo(hash);
    return blob && new Uint8Array(await blob.arrayBuffer());
  };
  const bytes = await writeBookFile({ book: snapshotOf(state), log, photo: bytesOf }, { asked, writtenAtMs });
  const isBackup = log !== null && asked.crashes && asked.patientPhotos;
  return { bytes, held: isBackup ? heads(state.vector) : [] };
}

/**
 * Takes a whole book file into the book of this device: every edit and photo of it in one transaction, or none. Throws a `UserError` for
 * a file that fails any check, and then the book is as it was.
 */
export async function takeInFile(book: OpenBook, file: BookFile, name: string): Promise<Received> {
  const updates = checkLog(file, name);
  const photos = new Map<string, Blob>();
  await file.eachPhoto(async ({ hash, type, bytes }) => {
    photos.set(hash, new Blob([bytes], { type }));
  });
  return book.receive([...updates.values()], name, photos);
}
