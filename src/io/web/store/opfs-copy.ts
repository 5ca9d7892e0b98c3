import type { Update } from '../../../book/merge/index.ts';
import { type Held, runsOf, type SecondCopy } from '../../store/index.ts';
import { keepSnapshot } from './opfs-snapshot.ts';

/** Pieces of the log before they are put together. */
const MANY = 60;

type Folder = FileSystemDirectoryHandle & { entries(): AsyncIterable<[string, FileSystemHandle]> };

/**
 * The second copy of the book of a name in the origin private file system: a folder a book; in `log` pieces named
 * actor~from~to.jsonl, one update a line; in `photos` files named by their hash. A file is there whole or not at all. Null where
 * the browser has no such place.
 */
export function opfsCopy(name: string): SecondCopy | null {
  if (!navigator.storage?.getDirectory) return null;
  const folder = async (...path: string[]): Promise<Folder> => {
    let at = await navigator.storage.getDirectory();
    for (const part of [`${name}-copy`, ...path]) at = await at.getDirectoryHandle(part, { create: true });
    return at as Folder;
  };
  return {
    look: async (asked) => {
      const book = asked ?? (await latestBook(await folder()));
      if (book === null) return null;
      const log = await folder(book, 'log');
      const held: Held[] = [];
      for (const name of await namesOf(log)) {
        const piece = heldBy(name);
        // An empty piece was begun and never written.
        if (piece && (await fileOf(log, name)).size > 0) held.push(piece);
      }
      return held.length > 0 ? { book, held } : null;
    },
    append: async (book, updates, blobs) => {
      if (blobs.size > 0) {
        const photos = await folder(book, 'photos');
        for (const [hash, blob] of blobs) await write(photos, hash, blob);
      }
      const log = await folder(book, 'log');
      for (const run of runsOf(updates)) await write(log, nameOf(run.held), linesOf(run.updates));
    },
    read: async (book) => {
      const photos = await folder(book, 'photos');
      const blobs = new Map<string, Blob>();
      for (const hash of (await namesOf(photos)).filter((name) => /^[0-9a-f]{64}$/.test(name))) {
        const file = await fileOf(photos, hash);
        if (file.size > 0) blobs.set(hash, file);
      }
      return { updates: await updatesIn(await folder(book, 'log')), blobs };
    },
    keepSnapshot: (text) => keepSnapshot(name, text),
    tidy: (book) =>
      navigator.locks.request(`${name}-copy`, { ifAvailable: true }, async (lock) => {
        const log = await folder(book, 'log');
        if (lock) for (const part of [log, await folder(book, 'photos')]) await removeStale(part);
        const pieces = (await namesOf(log)).filter((file) => heldBy(file));
        if (!lock || pieces.length < MANY) return;
        const whole = new Set<string>();
        for (const run of runsOf((await updatesIn(log)) as Update[])) {
          whole.add(nameOf(run.held));
          await write(log, nameOf(run.held), linesOf(run.updates));
        }
        for (const piece of pieces) if (!whole.has(piece)) await log.removeEntry(piece);
      }),
  };
}

const nameOf = ([actor, from, to]: Held): string => `${actor}~${from}~${to}.jsonl`;
const linesOf = (updates: readonly Update[]): string => updates.map((update) => `${JSON.stringify(update)}\n`).join('');

function heldBy(file: string): Held | null {
  const found = /^([A-Za-z0-9][A-Za-z0-9._-]*)~(\d+)~(\d+)\.jsonl$/.exec(file);
  return found && [found[1]!, Number(found[2]), Number(found[3])];
}

async function namesOf(folder: Folder): Promise<string[]> {
  const names: string[] = [];
  for await (const [name] of folder.entries()) names.push(name);
  return names;
}

const fileOf = async (folder: Folder, name: string): Promise<File> => (await folder.getFileHandle(name)).getFile();

/** Removes what a kill left of files on their way; one that somebody is at is refused, and stays. */
async function removeStale(folder: Folder): Promise<void> {
  for (const name of await namesOf(folder)) {
    if (name.endsWith('.crswap')) await folder.removeEntry(name).catch(() => undefined);
  }
}

/** Writes a file whole: what was written takes its place only when it is closed. */
async function write(folder: Folder, name: string, data: Blob | string): Promise<void> {
  const stream = await (await folder.getFileHandle(name, { create: true })).createWritable();
  await stream.write(data);
  await stream.close();
}

/** Every update of the pieces whose text is whole; a line that a kill cut off was never acknowledged. */
async function updatesIn(log: Folder): Promise<unknown[]> {
  const found: unknown[] = [];
  for (const name of await namesOf(log)) {
    if (!heldBy(name)) continue;
    for (const text of (await (await fileOf(log, name)).text()).split('\n')) {
      try {
        if (text !== '') found.push(JSON.parse(text));
      } catch {
        // Left out: the rest of the copy still counts.
      }
    }
  }
  return found;
}

/** The book whose log was written last. */
async function latestBook(all: Folder): Promise<string | null> {
  let latest: { book: string; at: number } | null = null;
  for (const book of await namesOf(all)) {
    const log = (await (await all.getDirectoryHandle(book)).getDirectoryHandle('log', { create: true })) as Folder;
    for (const name of await namesOf(log)) {
      const at = heldBy(name) ? (await fileOf(log, name)).lastModified : 0;
      if (at > (latest?.at ?? 0)) latest = { book, at };
    }
  }
  return latest?.book ?? null;
}
