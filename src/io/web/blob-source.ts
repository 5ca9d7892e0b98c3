import { UserError } from '../../units/index.ts';
import type { ByteSource } from '../ports.ts';

/** A file that a person chose or dropped, or any other blob; read by slices, never whole. */
export function blobSource(blob: Blob, name: string): ByteSource {
  return {
    name,
    size: async () => blob.size,
    read: async (offset, length, signal) => {
      signal?.throwIfAborted();
      try {
        return await blob.slice(offset, offset + length).arrayBuffer();
      } catch (cause) {
        throw new UserError('unreadable', `${name} can no longer be read (moved or changed?); choose the file again.`, {
          cause,
        });
      }
    },
  };
}
