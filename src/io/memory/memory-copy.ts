import { type Update, updateId } from '../../book/merge/index.ts';
import { runsOf, type SecondCopy } from '../store/index.ts';

/** A second copy in memory, for tests. */
export function memoryCopy(): SecondCopy {
  const books = new Map<string, { updates: Map<string, Update>; blobs: Map<string, Blob> }>();
  return {
    look: async (book) => {
      const found = books.get(book);
      if (!found) return null;
      const held = runsOf([...found.updates.values()]).map((run) => run.held);
      return { book, held, photos: [...found.blobs.keys()] };
    },
    latestBeside: async (book) => [...books.keys()].filter((one) => one !== book).at(-1) ?? null,
    append: async (book, updates, blobs) => {
      const found = books.get(book) ?? { updates: new Map(), blobs: new Map() };
      // The latest written comes last.
      books.delete(book);
      books.set(book, found);
      for (const update of updates) found.updates.set(updateId(update), structuredClone(update));
      for (const [hash, blob] of blobs) found.blobs.set(hash, blob);
    },
    read: async (book) => {
      const found = books.get(book);
      return { updates: structuredClone([...(found?.updates.values() ?? [])]), blobs: new Map(found?.blobs) };
    },
    keepSnapshot: async () => undefined,
    tidy: async () => undefined,
  };
}
