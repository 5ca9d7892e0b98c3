import { type Zippable, zipSync } from 'fflate';
import type { Book } from '../../book/index.ts';
import { UserError } from '../../units/index.ts';
import { imageEnding, imageTypeOf } from '../photos/image-type.ts';
import { type Asked, photosToSend, withoutUnasked } from './left-out.ts';
import { limits } from './limits.ts';
import { FILE_VERSION, limitOf, type Manifest } from './manifest.ts';
import { sha256 } from './sha256.ts';

/** What a book file is made of. */
export interface BookFileParts {
  /** The plain book, made from the updates where there are any. */
  readonly book: Book;
  /** The log as lines of JSON, one update each, or null for a reading copy. */
  readonly log: readonly string[] | null;
  /** Bytes of a photo by its hash; null where they are not on this device. */
  photo(hash: string): Promise<Uint8Array<ArrayBuffer> | null>;
}

/**
 * Bytes of a `.brinkbook` file. A whole file holds the log and with it every record; then `asked.crashes` has been settled by
 * whoever made the log (`logWithoutCrashes`). `writtenAtMs` is the device's clock. Photos that are not on this device are named in
 * the manifest as missing. Throws a `UserError` where the book is over what a file may hold.
 */
export async function writeBookFile(
  parts: BookFileParts,
  { asked, writtenAtMs }: { readonly asked: Asked; readonly writtenAtMs: number },
): Promise<Uint8Array<ArrayBuffer>> {
  const plain = withoutUnasked(parts.book, parts.log === null ? asked : { ...asked, patientPhotos: true });
  const entries = new Map<string, Uint8Array<ArrayBuffer>>();
  entries.set('snapshot.json', bytesOf(`${JSON.stringify(plain)}\n`));
  if (parts.log !== null) entries.set('log.jsonl', bytesOf(parts.log.map((line) => `${line}\n`).join('')));
  const missing = new Set<string>();
  for (const { hash } of photosToSend(parts.book, asked)) {
    const bytes = await parts.photo(hash);
    const type = bytes && imageTypeOf(bytes);
    if (type) entries.set(`photos/${hash}.${imageEnding[type]}`, bytes);
    else missing.add(hash);
  }
  const manifest: Manifest = {
    format: `brinkbook/file@${FILE_VERSION}`,
    content: parts.log === null ? 'reading copy' : 'whole',
    district: plain.tables.settings[0]?.district ?? '',
    writtenAt: new Date(writtenAtMs).toISOString(),
    leftOut: {
      crashes: !asked.crashes,
      patientPhotos: !asked.patientPhotos,
      missingPhotos: [...missing].sort(),
    },
    entries: [],
  };
  let total = 0;
  for (const [name, bytes] of entries) {
    total += bytes.length;
    if (bytes.length > limitOf(name) || total > limits.total || entries.size > limits.photos + 2) {
      throw new UserError(
        'file-too-large',
        `The book is over what one file may hold (${name} has ${bytes.length} bytes); delete photos that are not needed.`,
      );
    }
    manifest.entries.push({ name, bytes: bytes.length, sha256: await sha256(bytes) });
  }
  const zip: Zippable = { 'manifest.json': [bytesOf(`${JSON.stringify(manifest, null, 1)}\n`), { level: 6 }] };
  for (const [name, bytes] of entries) zip[name] = [bytes, { level: name.startsWith('photos/') ? 0 : 6 }];
  // One moment for every entry, so that the same book makes the same bytes.
  return zipSync(zip, { mtime: new Date(1980, 0, 1) }) as Uint8Array<ArrayBuffer>;
}

const bytesOf = (text: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(text) as Uint8Array<ArrayBuffer>;
