import { rename, writeFile } from 'node:fs/promises';
import type { Grid } from '../../terrain/index.ts';
import { layOut } from './write-geotiff-layout.ts';
import type { GeoTiffOptions } from './write-geotiff-options.ts';
import { averaged } from './write-geotiff-overview.ts';
import { geoTags, imageTags } from './write-geotiff-tags.ts';
import { compressTiles, type Tiles } from './write-geotiff-tiles.ts';

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
  const bytes = layOut(tags, tiles);
  const part = `${path}.part`;
  await writeFile(part, bytes);
  await rename(part, path);
}
