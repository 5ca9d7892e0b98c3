import type { ByteSource } from '../ports.ts';

/** Bytes of one cached block: about what a connection sends in the time of one round trip (a judgement). */
export const HEADER_BLOCK = 65_536;
const MOST_BLOCKS = 256;

/** What the directory parser of geotiff asks of a source. */
export interface SliceSource {
  fetch(slices: readonly { offset: number; length: number }[]): Promise<ArrayBuffer[]>;
  fetchSlice(slice: { offset: number; length: number }): Promise<{ offset: number; length: number; data: ArrayBuffer }>;
  readonly fileSize: number | null;
  close(): Promise<void>;
}

/**
 * Reads headers and directories through 64 KiB blocks kept in memory, so that the many small reads of a directory parser
 * become few requests. Takes no abort signal: a block may serve several callers.
 */
export function headerSource(source: ByteSource): SliceSource {
  const blocks = new Map<number, Promise<ArrayBuffer>>();

  function block(index: number): Promise<ArrayBuffer> {
    const known = blocks.get(index);
    if (known) return known;
    const asked = source.read(index * HEADER_BLOCK, HEADER_BLOCK);
    // A failure is not remembered: the next call tries again.
    asked.catch(() => blocks.delete(index));
    if (blocks.size >= MOST_BLOCKS) blocks.delete(blocks.keys().next().value!);
    blocks.set(index, asked);
    return asked;
  }

  async function slice(offset: number, length: number): Promise<ArrayBuffer> {
    const first = Math.floor(offset / HEADER_BLOCK);
    const last = Math.floor((offset + Math.max(1, length) - 1) / HEADER_BLOCK);
    if (!(first >= 0 && last - first < MOST_BLOCKS)) throw new RangeError(`${length} bytes at ${offset} are no header`);
    const parts = await Promise.all(Array.from({ length: last - first + 1 }, (_, i) => block(first + i)));
    const start = offset - first * HEADER_BLOCK;
    if (parts.length === 1) return parts[0].slice(start, start + length);
    const joined = new Uint8Array(parts.reduce((sum, part) => sum + part.byteLength, 0));
    let at = 0;
    for (const part of parts) {
      joined.set(new Uint8Array(part), at);
      at += part.byteLength;
    }
    return joined.buffer.slice(start, start + length);
  }

  return {
    fetch: (slices) => Promise.all(slices.map(({ offset, length }) => slice(offset, length))),
    fetchSlice: async ({ offset, length }) => ({ offset, length, data: await slice(offset, length) }),
    fileSize: null,
    close: async () => {
      blocks.clear();
    },
  };
}
