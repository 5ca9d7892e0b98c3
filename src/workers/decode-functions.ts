import { type BlockFormat, type BlockHeights, decodeBlock } from '../io/decode/index.ts';
import { transferring } from './transfer.ts';

/** What a decoding worker is asked for one block; `packed` is handed over. */
export interface DecodeAsk {
  readonly format: BlockFormat;
  readonly packed: ArrayBuffer;
}

/** What a decoding worker can be asked; tests call the same functions directly. */
export const decodeFunctions = {
  /** Answered as soon as the worker runs. */
  ready: async (_: null): Promise<true> => true,
  /** Heights of one block, handed over, not copied. */
  decode: async ({ format, packed }: DecodeAsk): Promise<BlockHeights> => {
    const heights = await decodeBlock(format, packed);
    return transferring(heights, [heights.buffer as ArrayBuffer]);
  },
};

export type DecodeFunctions = typeof decodeFunctions;
