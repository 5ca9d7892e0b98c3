import type { Grid } from '../../terrain/index.ts';
import type { ByteSource, DecodePool } from '../ports.ts';
import {
  blockStore,
  type Georeference,
  type HeightRule,
  type OpenedTiff,
  overviewOf,
  type RasterImage,
  rasterImage,
  readWindow,
  type Window,
} from '../tiff/index.ts';

/** One image of a raster, ready to be read: full resolution or an overview. */
export interface RasterReader {
  readonly image: RasterImage;
  readonly place: Georeference;
  /** Cells of a window whose rows count from the north, as a grid in CRS units and metres of height. */
  read(window: Window, signal?: AbortSignal): Promise<Grid>;
}

/** Unpacked blocks kept for each image, bytes: dragging a point about a site then reads nothing again. */
const KEPT_BYTES = 96 * 1024 * 1024;

/** Makes image `level` of an opened TIFF readable (0 is full resolution). Throws `UserError` where it cannot be. */
export async function rasterReader(
  source: ByteSource,
  tiff: OpenedTiff,
  level: number,
  full: Georeference,
  rule: HeightRule,
  pool: DecodePool,
): Promise<RasterReader> {
  const image = await rasterImage(tiff.images[level], tiff.littleEndian, rule, source.name);
  const first = tiff.images[0];
  const place = level === 0 ? full : overviewOf(full, { width: first.getWidth(), height: first.getHeight() }, image);
  const store = blockStore(source, image, pool, KEPT_BYTES);
  return {
    image,
    place,
    async read(window, signal) {
      const inFile = place.southUp
        ? { ...window, top: image.height - window.bottom, bottom: image.height - window.top }
        : window;
      return {
        width: window.right - window.left,
        height: window.bottom - window.top,
        data: await readWindow(image, store, inFile, place.southUp, signal),
        x0: place.x0 + window.left * place.stepX,
        y0: place.y0 - window.top * place.stepY,
        stepX: place.stepX,
        stepY: place.stepY,
      };
    },
  };
}
