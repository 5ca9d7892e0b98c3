import { type Book, restoreBook } from '../../book/index.ts';
import { UserError } from '../../units/index.ts';
import type { ByteSource } from '../ports.ts';
import { limits } from './limits.ts';
import { type BookFile, readBookFile } from './read-book-file.ts';

/** A book read from a file of either form: a `.brinkbook` file, or the plain book as JSON (then `file` is null and there are no photos). */
export interface ReadBook {
  readonly book: Book;
  readonly file: BookFile | null;
}

/** Reads a book by what its first bytes say that it is. Throws a `UserError` of one sentence. */
export async function readBook(source: ByteSource, signal?: AbortSignal): Promise<ReadBook> {
  const head = new Uint8Array(await source.read(0, 4, signal));
  if (head[0] === 0x50 && head[1] === 0x4b) {
    const file = await readBookFile(source, signal);
    return { book: file.book, file };
  }
  const size = (await source.size(signal)) ?? 0;
  if (size > limits.snapshot) {
    throw new UserError(
      'book-large',
      `${source.name} has ${size} bytes, over the ${limits.snapshot} of a plain book; choose another file.`,
    );
  }
  let json: unknown;
  try {
    json = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(await source.read(0, size, signal)));
  } catch (cause) {
    if (cause instanceof UserError) throw cause;
    throw new UserError(
      'book-none',
      `${source.name} is neither a book file nor a plain book in JSON; choose a file NAME.brinkbook.`,
    );
  }
  return { book: restoreBook(json, source.name), file: null };
}
