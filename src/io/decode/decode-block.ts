import { UserError } from '../../units/index.ts';
import { type BlockFormat, type BlockHeights, SAMPLE_BYTES } from './block-format.ts';
import { storedNumbers, toHeights } from './heights.ts';
import { swapBytes, undoDifferences, undoFloatPrediction } from './predictor.ts';
import { LERC, unpack } from './unpack.ts';

/**
 * Heights of one packed block. The work that a decoding pool does away from the caller's thread; here it runs on this one.
 * `packed` may be changed. Throws `UserError` where the block is broken.
 */
export async function decodeBlock(format: BlockFormat, packed: ArrayBuffer): Promise<BlockHeights> {
  if (format.compression === LERC) {
    const { unpackLerc } = await import('./unpack-lerc.ts');
    return toHeights(await unpackLerc(format, packed), format);
  }
  const bytesEach = SAMPLE_BYTES[format.sample];
  let bytes = await unpack(format.compression, packed, format.width * format.height * bytesEach);
  if (format.predictor === 3) {
    bytes = undoFloatPrediction(bytes, format.width, bytesEach);
  } else {
    if (!format.littleEndian) swapBytes(bytes, bytesEach);
    if (format.predictor === 2) undoDifferences(bytes, format.width, bytesEach);
  }
  return toHeights(storedNumbers(bytes, format.sample), format);
}

/** Throws `UserError` where the predictor is unknown or does not fit the numbers. */
export function checkPredictor(predictor: number, float: boolean, source: string): void {
  if (predictor === 1 || predictor === 2 || (predictor === 3 && float)) return;
  throw new UserError(
    'predictor',
    `${source} uses TIFF predictor ${predictor}, which its numbers cannot have; write it again with "gdal_translate".`,
  );
}
