import type { DecodePool } from '../ports.ts';
import { decodeBlock } from './decode-block.ts';

/** Unpacks on the caller's own thread: for a single study, and where no worker can be started. */
export const decodeHere: DecodePool = {
  async decode(format, packed, signal) {
    signal?.throwIfAborted();
    return decodeBlock(format, packed);
  },
  close: async () => {},
};
