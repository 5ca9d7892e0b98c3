import { BOOK_VERSION, type Book, restoreBook, versionOf } from '../../../book/schema/index.ts';
import { ONLY, openDatabase } from './open-database.ts';
import { keptSnapshot } from './second-place.ts';
import { inTransaction } from './transaction.ts';

/** The plain book as a reader opens it. */
export interface ReaderBook {
  readonly book: Book;
  /** The device holds edits that this snapshot does not: it says so on the screen. */
  readonly behind: boolean;
}

interface Kept {
  readonly text: string | null;
  readonly heads: readonly (readonly [string, number])[];
  readonly vector: ReadonlyMap<string, { readonly upTo: number; readonly beyond: ReadonlySet<number> }>;
}

/**
 * The snapshot of the browser's book of a name, without the merge: for the call view and whatever only reads. Null where there is
 * none yet. A snapshot of this program's own version was checked when it was made and is taken as it is.
 */
export async function readerSnapshot(name: string): Promise<ReaderBook | null> {
  const database = await openDatabase(name);
  try {
    const { text, heads, vector } = await inTransaction<Kept>(database, ['meta', 'snapshot'], 'readonly', (at) => {
      const meta = at.store('meta').get(ONLY);
      at.when(at.store('snapshot').get(ONLY), (snapshot) =>
        at.give({
          text: snapshot?.text ?? null,
          heads: snapshot?.heads ?? [],
          vector: meta.result?.vector ?? new Map(),
        }),
      );
    });
    // The browser may have emptied its database: the second place holds the book as it settled last.
    const second = text === null ? await keptSnapshot(name) : null;
    if (second !== null) return { book: bookOf(second), behind: true };
    if (text === null) return null;
    const book = bookOf(text);
    const made = new Map(heads);
    const behind = [...vector].some(([actor, { upTo, beyond }]) => upTo > (made.get(actor) ?? 0) || beyond.size > 0);
    return { book, behind };
  } finally {
    database.close();
  }
}

function bookOf(text: string): Book {
  const json: unknown = JSON.parse(text);
  return versionOf(json) === BOOK_VERSION ? (json as Book) : restoreBook(json, 'The book on this device');
}
