import { type Book, restoreBook } from '../../book/index.ts';
import { UserError } from '../../units/index.ts';
import { type ImageType, imageEnding, imageTypeOf } from '../photos/image-type.ts';
import type { ByteSource } from '../ports.ts';
import { type Manifest, readManifest } from './manifest.ts';
import { sha256 } from './sha256.ts';
import { unpack } from './unpack.ts';

/** A photo out of a book file. */
export interface FilePhoto {
  readonly hash: string;
  readonly type: ImageType;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** A book file that was checked whole. */
export interface BookFile {
  readonly manifest: Manifest;
  readonly book: Book;
  /** Lines of the log, one update each as JSON, or null in a reading copy. The merge checks what they say. */
  readonly log: readonly string[] | null;
  readonly photoHashes: readonly string[];
  /** Hands over every photo, one at a time, reading the file a second time. */
  eachPhoto(take: (photo: FilePhoto) => Promise<void>, signal?: AbortSignal): Promise<void>;
}

/**
 * Reads and checks a whole `.brinkbook` file: container, sizes, hashes, every record of the plain book, every photo's kind. The
 * file is read in pieces; at most one photo is held. Throws a `UserError` of one sentence, and then nothing was given out.
 */
export async function readBookFile(source: ByteSource, signal?: AbortSignal): Promise<BookFile> {
  const texts = new Map<string, Uint8Array<ArrayBuffer>>();
  const found = new Map<string, { bytes: number; sha256: string }>();
  await unpack(
    source,
    async (name, bytes) => {
      if (name === 'manifest.json') {
        texts.set(name, bytes);
        return;
      }
      const hash = await sha256(bytes);
      found.set(name, { bytes: bytes.length, sha256: hash });
      if (name.startsWith('photos/')) checkPhoto(name, hash, bytes, source.name);
      else texts.set(name, bytes);
    },
    signal,
  );
  const manifest = readManifest(textOf(texts, 'manifest.json', source.name), source.name);
  compare(manifest, found, source.name);
  let json: unknown;
  try {
    json = JSON.parse(textOf(texts, 'snapshot.json', source.name));
  } catch {
    throw damaged(source.name, 'snapshot.json');
  }
  const book = restoreBook(json, source.name);
  const log = manifest.content === 'whole' ? linesOf(textOf(texts, 'log.jsonl', source.name)) : null;
  const photoHashes = manifest.entries.flatMap(({ name }) => (name.startsWith('photos/') ? [name.slice(7, 71)] : []));
  return {
    manifest,
    book,
    log,
    photoHashes,
    eachPhoto: (take, stop) =>
      unpack(
        source,
        async (name, bytes) => {
          if (!name.startsWith('photos/')) return;
          const hash = await sha256(bytes);
          await take({ hash, type: checkPhoto(name, hash, bytes, source.name), bytes });
        },
        stop,
      ),
  };
}

function compare(
  manifest: Manifest,
  found: ReadonlyMap<string, { bytes: number; sha256: string }>,
  file: string,
): void {
  for (const entry of manifest.entries) {
    const there = found.get(entry.name);
    if (!there)
      throw new UserError('file-missing', `${file} lacks its entry ${entry.name}; take another copy of the book.`);
    if (there.bytes !== entry.bytes || there.sha256 !== entry.sha256) throw damaged(file, entry.name);
  }
  const listed = new Set(manifest.entries.map(({ name }) => name));
  const extra = [...found.keys()].find((name) => !listed.has(name));
  if (extra !== undefined) {
    throw new UserError(
      'file-extra',
      `${file} holds ${extra}, which its manifest does not list; take another copy of the book.`,
    );
  }
}

function checkPhoto(name: string, hash: string, bytes: Uint8Array, file: string): ImageType {
  const type = imageTypeOf(bytes);
  if (!type || name !== `photos/${hash}.${imageEnding[type]}`) throw damaged(file, name);
  return type;
}

function textOf(texts: ReadonlyMap<string, Uint8Array<ArrayBuffer>>, name: string, file: string): string {
  const bytes = texts.get(name);
  if (!bytes)
    throw new UserError('file-missing', `${file} has no ${name}, so it is no book file; choose a file NAME.brinkbook.`);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw damaged(file, name);
  }
}

/** Lines of a log; every one ends with a line break, so that a cut one shows. */
const linesOf = (text: string): string[] => text.split('\n').filter((line) => line !== '');

const damaged = (file: string, name: string): UserError =>
  new UserError(
    'file-damaged',
    `${file} is damaged: its entry ${name} is not what was written; take another copy of the book.`,
  );
