import { Unzip, UnzipInflate, UnzipPassThrough } from 'fflate';
import { UserError } from '../../units/index.ts';
import type { ByteSource } from '../ports.ts';
import { limits } from './limits.ts';
import { isEntryName, limitOf } from './manifest.ts';

/** Bytes handed to the unpacker at once: deflate grows them at most 1032 times, so a bomb is caught within 17 MB. */
const CHUNK = 16_384;

/**
 * Every entry of a zip in the order of the file, unpacked one at a time and handed to `take`. Names are allow-listed, none twice,
 * sizes bounded while they unpack. Throws a `UserError` naming the source; what `take` throws passes through.
 */
export async function unpack(
  source: ByteSource,
  take: (name: string, bytes: Uint8Array<ArrayBuffer>) => Promise<void>,
  signal?: AbortSignal,
): Promise<void> {
  const size = await source.size(signal);
  if (size !== null && size > limits.total) {
    throw refusal(source, `has ${size} bytes, over the ${limits.total} that a book file may have`);
  }
  const seen = new Set<string>();
  const done: { name: string; bytes: Uint8Array<ArrayBuffer> }[] = [];
  let open: string | null = null;
  let total = 0;
  let fault: UserError | null = null;
  const unzip = new Unzip((file) => {
    if (file.name === 'photos/') return; // A folder, which other zip programs write.
    if (!isEntryName(file.name) || seen.has(file.name) || open !== null || seen.size > limits.photos + 3) {
      fault ??= refusal(
        source,
        `holds "${plain(file.name)}", which a book file cannot hold${seen.has(file.name) ? ' twice' : ''}`,
      );
      return;
    }
    seen.add(file.name);
    open = file.name;
    const parts: Uint8Array[] = [];
    let bytes = 0;
    file.ondata = (error, part, final) => {
      if (fault) return;
      bytes += part?.length ?? 0;
      total += part?.length ?? 0;
      if (error) fault = refusal(source, 'is damaged');
      else if (bytes > limitOf(file.name) || total > limits.total)
        fault = refusal(source, `unpacks "${file.name}" to more than a book file may hold`);
      if (fault) return;
      parts.push(part);
      if (!final) return;
      open = null;
      done.push({ name: file.name, bytes: joined(parts, bytes) });
    };
    file.start();
  });
  unzip.register(UnzipInflate);
  unzip.register(UnzipPassThrough);
  for (let offset = 0; ; offset += CHUNK) {
    const chunk = new Uint8Array(await source.read(offset, CHUNK, signal));
    try {
      unzip.push(chunk, chunk.length < CHUNK);
    } catch {
      fault ??= refusal(source, 'is damaged or no book file');
    }
    if (fault) throw fault;
    for (const { name, bytes } of done.splice(0)) await take(name, bytes);
    if (chunk.length < CHUNK) break;
  }
  if (open !== null || seen.size === 0) throw refusal(source, seen.size === 0 ? 'is no book file' : 'ends too early');
}

function joined(parts: readonly Uint8Array[], length: number): Uint8Array<ArrayBuffer> {
  const all = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

const refusal = (source: ByteSource, what: string): UserError =>
  new UserError('file-zip', `${source.name} ${what}; take another copy of the book (NAME.brinkbook).`);

/** At most 60 printable characters of a name that somebody else wrote. */
const plain = (name: string): string => name.replace(/[^\x20-\x7E]/g, '?').slice(0, 60);
