import type { Update } from '../../../book/merge/index.ts';
import { type Held, runsOf, type SecondCopy } from '../../store/index.ts';
import { addressOf, keepSnapshot, secondPlace } from './second-place.ts';

/** Pieces of the log before they are put together. */
const MANY = 60;
/** Header of a piece: when it was kept, milliseconds since 1970. */
const KEPT_AT = 'x-kept-at';

/**
 * The second copy of the book of a name in its second place: for each book pieces of the log under BOOK/log/ACTOR~FROM~TO, one
 * update a line, and photos under BOOK/photos/HASH. An entry is there whole or not at all. Null where the browser has no such place.
 */
export function secondCopy(name: string): SecondCopy | null {
  const asked = secondPlace(name);
  if (!asked) return null;
  // Each use tells of the refusal; unused it is none of the page's errors.
  asked.catch(() => undefined);
  return {
    look: async (book) => {
      const cache = await asked;
      const own = (await entriesOf(cache)).filter((entry) => entry.book === book);
      const held = own.flatMap(({ held }) => (held ? [held] : []));
      const photos = own.flatMap(({ photo }) => photo ?? []);
      return held.length > 0 ? { book, held, photos } : null;
    },
    latestBeside: async (book) => {
      const cache = await asked;
      const others = (await entriesOf(cache)).filter((entry) => entry.held && entry.book !== book);
      return latestBook(cache, others);
    },
    append: async (book, updates, blobs) => {
      const cache = await asked;
      for (const [hash, blob] of blobs) await cache.put(addressOf(`${book}/photos/${hash}`), new Response(blob));
      for (const run of runsOf(updates)) await cache.put(pieceOf(book, run.held), asPiece(run.updates));
    },
    read: async (book) => {
      const cache = await asked;
      const own = (await entriesOf(cache)).filter((entry) => entry.book === book);
      const blobs = new Map<string, Blob>();
      for (const { photo, url } of own) {
        const blob = photo && (await contentOf(cache, url, (found) => found.blob()));
        if (blob) blobs.set(photo, blob);
      }
      return { updates: await updatesIn(cache, own), blobs };
    },
    keepSnapshot: (text) => keepSnapshot(name, text),
    tidy: (book) =>
      navigator.locks.request(`${name}-second-copy`, { ifAvailable: true }, async (lock) => {
        const cache = await asked;
        const pieces = (await entriesOf(cache)).filter((entry) => entry.book === book && entry.held);
        if (!lock || pieces.length < MANY) return;
        const updates = (await updatesIn(cache, pieces)) as Update[];
        const whole = new Set<string>();
        for (const run of runsOf(updates)) {
          whole.add(pieceOf(book, run.held));
          await cache.put(pieceOf(book, run.held), asPiece(run.updates));
        }
        for (const { url } of pieces) if (!whole.has(url)) await cache.delete(url);
      }),
  };
}

/** An entry of the second place: a piece of a book's log, or a photo by its hash. */
interface Entry {
  readonly url: string;
  readonly book: string;
  readonly held?: Held;
  readonly photo?: string;
}

const pieceOf = (book: string, [actor, from, to]: Held): string => addressOf(`${book}/log/${actor}~${from}~${to}`);

const asPiece = (updates: readonly Update[]): Response =>
  new Response(updates.map((update) => `${JSON.stringify(update)}\n`).join(''), {
    headers: { [KEPT_AT]: String(Date.now()) },
  });

async function entriesOf(cache: Cache): Promise<Entry[]> {
  const start = addressOf('');
  return (await cache.keys()).flatMap(({ url }): Entry[] => {
    const [book = '', kind, name = ''] = url.slice(start.length).split('/');
    if (kind === 'photos') return [{ url, book, photo: name }];
    const found = kind === 'log' && /^([A-Za-z0-9][A-Za-z0-9._-]*)~(\d+)~(\d+)$/.exec(name);
    return found ? [{ url, book, held: [found[1]!, Number(found[2]), Number(found[3])] }] : [];
  });
}

/** What is in an entry; null where it cannot be read: the rest of the copy still counts. */
async function contentOf<T>(cache: Cache, url: string, read: (found: Response) => Promise<T>): Promise<T | null> {
  try {
    const found = await cache.match(url);
    return found ? await read(found) : null;
  } catch {
    return null;
  }
}

/** Every update of the pieces that can be read, unchecked. */
async function updatesIn(cache: Cache, entries: readonly Entry[]): Promise<unknown[]> {
  const found: unknown[] = [];
  for (const { url, held } of entries) {
    const text = held && (await contentOf(cache, url, (piece) => piece.text()));
    for (const line of text?.split('\n') ?? []) {
      try {
        if (line !== '') found.push(JSON.parse(line));
      } catch {
        // Left out: the rest of the piece still counts.
      }
    }
  }
  return found;
}

/** The book whose piece of log was written last. */
async function latestBook(cache: Cache, pieces: readonly Entry[]): Promise<string | null> {
  const books = new Set(pieces.map(({ book }) => book));
  if (books.size < 2) return pieces[0]?.book ?? null;
  let latest: { book: string; at: number } | null = null;
  for (const { book, url } of pieces) {
    const at = Number((await cache.match(url))?.headers.get(KEPT_AT) ?? 0);
    if (at > (latest?.at ?? -1)) latest = { book, at };
  }
  return latest?.book ?? null;
}
