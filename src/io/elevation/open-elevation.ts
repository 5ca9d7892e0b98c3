import type { LonLat } from '../../geo/index.ts';
import { fitLayer } from '../../terrain/index.ts';
import { decodeHere } from '../decode/index.ts';
import type { ByteSource, DecodePool, ElevationOptions, ElevationSource } from '../ports.ts';
import { cellSize } from './cell-size.ts';
import { cellWindow } from './cell-window.ts';
import { describeRaster } from './describe-raster.ts';
import { lonLatBounds } from './lon-lat-bounds.ts';
import { mapReader } from './map-reader.ts';

/** A position that comes back this far off from the raster's CRS lies outside where that CRS is defined, degrees. */
const ROUND_TRIP_DEG = 1e-6;

/**
 * Opens a GeoTIFF of heights: reads its directories, finds out what it says and what `options` must fill in. Blocks are
 * decoded by `pool`, which the caller closes. Every failure is a `UserError` with one sentence, and closes the source;
 * `signal` gives up the opening.
 */
export async function openElevation(
  source: ByteSource,
  options: ElevationOptions = {},
  pool: DecodePool = decodeHere,
  signal?: AbortSignal,
): Promise<ElevationSource> {
  try {
    return await opened(source, options, pool, signal);
  } catch (error) {
    await source.close?.();
    throw error;
  }
}

async function opened(
  source: ByteSource,
  options: ElevationOptions,
  pool: DecodePool,
  signal: AbortSignal | undefined,
): Promise<ElevationSource> {
  const { tiff, place, crs, rule, full, info } = await describeRaster(source, options, pool, signal);
  const size = full.image;

  return {
    info,
    bounds: lonLatBounds(place, size, crs),
    covers({ lon, lat }: LonLat) {
      if (!(Number.isFinite(lon) && Number.isFinite(lat))) return false;
      const [x, y] = crs.fromLonLat(lon, lat);
      const col = (x - place.x0) / place.stepX;
      const row = (place.y0 - y) / place.stepY;
      if (!(col >= -0.5 && col <= size.width - 0.5 && row >= -0.5 && row <= size.height - 0.5)) return false;
      const [lonBack, latBack] = crs.toLonLat(x, y);
      return Math.abs(lonBack - lon) < ROUND_TRIP_DEG && Math.abs(latBack - lat) < ROUND_TRIP_DEG;
    },
    async readLayer(plane, centre, halfSizeM, given) {
      const box = {
        west: centre.x - halfSizeM,
        south: centre.y - halfSizeM,
        east: centre.x + halfSizeM,
        north: centre.y + halfSizeM,
      };
      const window = cellWindow(place, size, box, (x, y) => {
        const { lon, lat } = plane.toLonLat({ x, y });
        return crs.fromLonLat(lon, lat);
      });
      if (!window) return null;
      const grid = await full.read(window, given);
      const col = (window.left + window.right - 1) / 2;
      const row = (window.top + window.bottom - 1) / 2;
      return fitLayer({ ...info, cellM: cellSize(place, crs, col, row) }, grid, plane, box, crs.fromLonLat);
    },
    readForMap: mapReader(source, tiff, full, rule, crs, pool),
    close: async () => source.close?.(),
  };
}
