import type { ByteSource } from '../ports.ts';

/** Bytes that are already in memory. */
export function memorySource(bytes: Uint8Array, name: string): ByteSource {
  return {
    name,
    size: async () => bytes.byteLength,
    read: async (offset, length, signal) => {
      signal?.throwIfAborted();
      return new Uint8Array(bytes.subarray(offset, offset + length)).buffer;
    },
  };
}
