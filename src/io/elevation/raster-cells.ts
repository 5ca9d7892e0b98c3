import type { LonLat } from '../../geo/index.ts';
import { localPlane } from '../../geo/index.ts';
import type { Grid } from '../../terrain/index.ts';
import { METRES_PER } from '../../units/index.ts';
import { decodeHere } from '../decode/index.ts';
import type { ByteSource, DecodePool, ElevationOptions } from '../ports.ts';
import type { Window } from '../tiff/index.ts';
import { cellWindow } from './cell-window.ts';
import { describeRaster } from './describe-raster.ts';

/** The georeferencing keys of a GeoTIFF as the file holds them (OGC GeoTIFF 1.1: directory, doubles, texts). */
export interface RawGeoKeys {
  readonly directory: readonly number[];
  readonly doubles: readonly number[];
  readonly ascii: string;
}

/** A raster's own cells, to be written into another raster that says the same of itself. */
export interface RasterCells {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly keys: RawGeoKeys;
  /** Items that say what the heights are: kind, accuracy, date; and their unit in the words of the file, or null. */
  readonly items: ReadonlyMap<string, string>;
  readonly unitType: string | null;
  /** Cells within `halfM` metres of a place, each way, or null where the raster does not reach there. */
  windowAround(at: LonLat, halfM: number): Window | null;
  /** Heights of a window in the unit that the file counts them in, scale and offset applied; places in its own coordinates. */
  read(window: Window, signal?: AbortSignal): Promise<Grid>;
  close(): Promise<void>;
}

/** What is read of a file's items: nothing else of what it holds goes on. */
const TOLD = ['TERRAIN_KIND', 'VERTICAL_RMSE_M', 'COLLECTED_ON'];

/** Opens a GeoTIFF of heights for its cells. Throws `UserError` and closes the source where it cannot, as `openElevation` does. */
export async function openCells(
  source: ByteSource,
  options: ElevationOptions = {},
  pool: DecodePool = decodeHere,
): Promise<RasterCells> {
  try {
    return await opened(source, options, pool);
  } catch (error) {
    await source.close?.();
    throw error;
  }
}

async function opened(source: ByteSource, options: ElevationOptions, pool: DecodePool): Promise<RasterCells> {
  const { tiff, metadata, place, crs, full, info } = await describeRaster(source, options, pool, undefined);
  const { fileDirectory } = tiff.images[0]!;
  const perUnit = METRES_PER[info.verticalUnit];
  return {
    name: source.name,
    width: full.image.width,
    height: full.image.height,
    keys: {
      directory: [...(fileDirectory.getValue('GeoKeyDirectory') ?? [])],
      doubles: [...(fileDirectory.getValue('GeoDoubleParams') ?? [])],
      ascii: fileDirectory.getValue('GeoAsciiParams') ?? '',
    },
    items: new Map([...metadata.items].filter(([name]) => TOLD.includes(name))),
    unitType: metadata.unitType,
    windowAround(at, halfM) {
      const plane = localPlane(at);
      const box = { west: -halfM, south: -halfM, east: halfM, north: halfM };
      return cellWindow(place, full.image, box, (x, y) => {
        const { lon, lat } = plane.toLonLat({ x, y });
        return crs.fromLonLat(lon, lat);
      });
    },
    async read(window, signal) {
      const grid = await full.read(window, signal);
      return perUnit === 1 ? grid : { ...grid, data: Float32Array.from(grid.data, (height) => height / perUnit) };
    },
    close: async () => source.close?.(),
  };
}
