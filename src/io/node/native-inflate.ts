import { inflateSync } from 'node:zlib';
import { unpackDeflateWith } from '../decode/index.ts';

/** Lets deflate blocks be unpacked by Node's own zlib on this thread. */
export function inflateNatively(): void {
  unpackDeflateWith((packed) => {
    const bytes = inflateSync(packed);
    // Small results come from a shared pool: their buffer is not theirs alone.
    return bytes.byteLength === bytes.buffer.byteLength
      ? new Uint8Array(bytes.buffer as ArrayBuffer)
      : new Uint8Array(bytes);
  });
}
