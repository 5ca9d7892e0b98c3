import { rename, writeFile } from 'node:fs/promises';
import type { Grid } from '../../terrain/index.ts';
import { UserError } from '../../units/index.ts';
import type { GeoTiffOptions } from './write-geotiff-options.ts';
import { averaged } from './write-geotiff-overview.ts';
import { geoTags, ifd, ifdSize, imageTags, type Tag, withTiles } from './write-geotiff-tags.ts';
import { compressTiles, type Tiles } from './write-geotiff-tiles.ts';

/** Offsets are 32 bits wide: classic TIFF, not BigTIFF. */
const LIMIT = 2 ** 32 - 1;

/**
 * Writes heights (metres, the grid's pixel rule) as a tiled float32 GeoTIFF: pixel-is-area, deflate, floating-point
 * predictor, averaged overviews by halves, headers first and overviews before the full resolution, as cloud-optimised
 * readers like it. The file appears whole or not at all. Throws `UserError` where it would pass 4 GiB.
 */
export async function writeGeoTiff(path: string, grid: Grid, options: GeoTiffOptions): Promise<void> {
  const size = options.tileSize ?? 256;
  const images = [grid];
  const smallest = options.smallestOverview ?? 256;
  while (Math.max(images.at(-1)!.width, images.at(-1)!.height) > smallest) images.push(averaged(images.at(-1)!));
  const tiles: Tiles[] = [];
  for (const image of images) tiles.push(await compressTiles(image, size, options.noData, options.level ?? 4));
  const tags = images.map((image, k) => [
    ...imageTags(image, size, k > 0, options),
    ...(k === 0 ? geoTags(grid, options) : []),
  ]);
  const bytes = assemble(tags, tiles);
  const part = `${path}.part`;
  await writeFile(part, bytes);
  await rename(part, path);
}

/** Lays out the file: header, directories, then tiles from the smallest overview to the full resolution. */
function assemble(tags: readonly Tag[][], tiles: readonly Tiles[]): Uint8Array {
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
      tiles[k].offsets.push(offset);
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
      out.set(block, tiles[k].offsets[t]);
    });
  });
  return out;
}
