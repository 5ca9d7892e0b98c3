import type { Crs } from '../../geo/index.ts';
import type { ByteSource, DecodePool, ElevationSource } from '../ports.ts';
import type { HeightRule, OpenedTiff } from '../tiff/index.ts';
import { cellSize } from './cell-size.ts';
import { cellWindow } from './cell-window.ts';
import { type RasterReader, rasterReader } from './raster-reader.ts';

/** A window of more cells is not read for a picture: a raster without overviews, seen from too far. */
const MOST_CELLS = 2 ** 25;

/**
 * Reads for the map: the coarsest overview whose cells are not over the wanted size. Null where the raster does not reach
 * into the box, or where it has no overview coarse enough to be read at that distance.
 */
export function mapReader(
  source: ByteSource,
  tiff: OpenedTiff,
  full: RasterReader,
  rule: HeightRule,
  crs: Crs,
  pool: DecodePool,
): ElevationSource['readForMap'] {
  const levels: Promise<RasterReader>[] = [Promise.resolve(full)];
  const level = (i: number): Promise<RasterReader> => {
    const asked = levels[i] ?? rasterReader(source, tiff, i, full.place, rule, pool);
    levels[i] = asked;
    // A failure is not remembered: the next call tries again.
    asked.catch(() => delete levels[i]);
    return asked;
  };
  const fullCellM = cellSize(full.place, crs, full.image.width / 2, full.image.height / 2);

  return async (box, cellM, signal) => {
    let best = 0;
    for (let i = 1; i < tiff.images.length; i++) {
      if ((fullCellM * full.image.width) / tiff.images[i].getWidth() <= cellM) best = i;
    }
    const { place, image, read } = await level(best);
    const window = cellWindow(place, image, box, crs.fromLonLat);
    if (!window || (window.right - window.left) * (window.bottom - window.top) > MOST_CELLS) return null;
    const grid = await read(window, signal);
    return {
      grid,
      toIndex({ lon, lat }) {
        const [x, y] = crs.fromLonLat(lon, lat);
        return { col: (x - grid.x0) / grid.stepX, row: (grid.y0 - y) / grid.stepY };
      },
    };
  };
}
