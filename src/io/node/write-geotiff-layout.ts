import { UserError } from '../../units/index.ts';
import { ifd, ifdSize, type Tag, withTiles } from './write-geotiff-tags.ts';
import type { Tiles } from './write-geotiff-tiles.ts';

/** Offsets are 32 bits wide: classic TIFF, not BigTIFF. */
const LIMIT = 2 ** 32 - 1;

/**
 * Lays out the file: header, directories, then tiles from the smallest overview to the full resolution. An empty block stands for a
 * tile that the file leaves out: offset 0, no bytes. Throws `UserError` where it would pass 4 GiB.
 */
export function layOut(tags: readonly Tag[][], tiles: readonly Tiles[]): Uint8Array {
  const headers = tags.map((list, k) => withTiles(list, tiles[k]));
  let offset = 8;
  const ifdOffsets = headers.map((list) => {
    const at = offset;
    offset += ifdSize(list);
    return at;
  });
  for (let k = tiles.length - 1; k >= 0; k--) {
    tiles[k].offsets.length = 0;
    for (const block of tiles[k].blocks) {
      tiles[k].offsets.push(block.length === 0 ? 0 : offset);
      offset += block.length + (block.length & 1);
    }
  }
  if (offset > LIMIT) {
    throw new UserError(
      'tiff-too-large',
      `The raster takes ${offset} bytes, but a classic TIFF ends at 4 GiB; write it in parts.`,
    );
  }
  const out = new Uint8Array(offset);
  const view = new DataView(out.buffer);
  out.set([0x49, 0x49, 42, 0]);
  view.setUint32(4, ifdOffsets[0], true);
  tags.forEach((list, k) => {
    ifd(withTiles(list, tiles[k]), view, ifdOffsets[k], ifdOffsets[k + 1] ?? 0);
    tiles[k].blocks.forEach((block, t) => {
      if (block.length > 0) out.set(block, tiles[k].offsets[t]);
    });
  });
  return out;
}
