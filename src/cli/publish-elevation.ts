import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Book } from '../book/index.ts';
import type { LonLat } from '../geo/index.ts';
import { openCells } from '../io/index.ts';
import { type FolderInMaking, writeCut } from '../io/node/index.ts';
import { type Publication, publishedPaths, rasterStems } from '../io/publish/index.ts';
import { rasterOptions, rasterSource } from './district-files.ts';
import { GROUND_HALF_M } from './publish-studies.ts';

/** Cuts each raster to the ground around the sites; a raster that reaches none of them is left out. */
export async function cutElevation(
  folder: FolderInMaking,
  rasters: readonly string[],
  facts: Book,
  sites: readonly LonLat[],
): Promise<Publication['elevation']> {
  const made: Publication['elevation'][number][] = [];
  const stems = rasterStems(rasters);
  await mkdir(join(folder.path, 'data/elevation'), { recursive: true });
  for (const [i, raster] of rasters.entries()) {
    const options = rasterOptions(facts, raster);
    const cells = await openCells(rasterSource(raster), options);
    try {
      const boxes = sites.flatMap((at) => cells.windowAround(at, GROUND_HALF_M) ?? []);
      if (boxes.length === 0) continue;
      const file = publishedPaths.elevation(stems[i]!);
      await writeCut(join(folder.path, file), cells, boxes);
      made.push({ file, options });
    } finally {
      await cells.close();
    }
  }
  return made;
}
