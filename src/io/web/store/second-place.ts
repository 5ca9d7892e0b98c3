/**
 * The place of the second copy of a book of a name: a cache of this origin. It is not the origin private file system, whose directory
 * Chromium keeps in a log of its own: a kill that tears it loses, two starts later, a stretch of what was filed in between, without
 * a word (measured; so does the database's log). Entries of a cache are files of their own. Null where the browser has none.
 */
export const secondPlace = (name: string): Promise<Cache> | null =>
  globalThis.caches ? caches.open(`${name}-second-copy`) : null;

/** Address of an entry of the second place; nothing is served there. */
export const addressOf = (path: string): string => new URL(`/second-copy/${path}`, location.origin).href;

const SNAPSHOT = 'snapshot';

/** Keeps the text of a plain book, for readers whose database the browser has emptied. Knows nothing of the merge. */
export async function keepSnapshot(name: string, text: string): Promise<void> {
  await (await secondPlace(name))?.put(addressOf(SNAPSHOT), new Response(text));
}

/** The plain book's text kept last; null where there is none or the browser has no such place. */
export async function keptSnapshot(name: string): Promise<string | null> {
  try {
    return (await (await (await secondPlace(name))?.match(addressOf(SNAPSHOT)))?.text()) ?? null;
  } catch {
    return null;
  }
}
