import Lerc from 'lerc';
import { UserError } from '../../units/index.ts';
import type { BlockFormat, BlockHeights } from './block-format.ts';
import { needsDoubles } from './heights.ts';
import { DEFLATE, unpack, ZSTD } from './unpack.ts';

const packedWith: Readonly<Record<number, number>> = { 1: DEFLATE, 2: ZSTD };

/**
 * Stored numbers of a LERC block as floats, NaN where its mask says that there is no data: the mask must not be lost, or
 * missing ground would read as height 0. Throws `UserError` where the block is broken. [source: lerc]
 */
export async function unpackLerc(format: BlockFormat, packed: ArrayBuffer): Promise<BlockHeights> {
  const outer = packedWith[format.lercPacking];
  const blob = outer === undefined ? packed : (await unpack(outer, packed, null)).buffer;
  const image = read(blob);
  const values = image.pixels[0];
  const cells = format.width * format.height;
  if (!values || values.length < cells || image.width !== format.width) {
    throw broken(`it is ${image.width} × ${image.height} cells where ${format.width} × ${format.height} were expected`);
  }
  const out = needsDoubles(format.sample) ? new Float64Array(cells) : new Float32Array(cells);
  for (let i = 0; i < cells; i++) out[i] = values[i];
  const mask = image.mask;
  if (mask) for (let i = 0; i < cells; i++) if (mask[i] === 0) out[i] = Number.NaN;
  return out;
}

function read(blob: ArrayBuffer) {
  try {
    return Lerc.decode(blob);
  } catch (cause) {
    throw broken(cause instanceof Error ? cause.message : String(cause));
  }
}

const broken = (why: string): UserError =>
  new UserError(
    'broken-block',
    `A LERC block of the raster cannot be unpacked (${why}); copy or download the file again.`,
  );
