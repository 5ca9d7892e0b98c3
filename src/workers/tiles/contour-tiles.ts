import contour from 'maplibre-contour';
import { FOOT_M, type UnitSystem } from '../../units/index.ts';
import { finestZoom, TILE_SIZE, type TileAddress } from './tile-box.ts';

/** Contour interval and index interval by zoom, feet and metres; the first row whose zoom is reached from above counts. */
const intervals: readonly { fromZoom: number; us: [number, number]; metric: [number, number] }[] = [
  { fromZoom: 17, us: [5, 25], metric: [2, 10] },
  { fromZoom: 16, us: [10, 50], metric: [2, 10] },
  { fromZoom: 15, us: [20, 100], metric: [5, 25] },
  { fromZoom: 14, us: [40, 200], metric: [10, 50] },
  { fromZoom: 12, us: [100, 500], metric: [20, 100] },
  { fromZoom: 0, us: [200, 1000], metric: [50, 250] },
];

/**
 * Makes contour tiles (Mapbox vector tile bytes; layer "contours", properties `ele` in the reader's unit, `level` 1 for an
 * index contour) from ground tiles and their neighbours.
 */
export function contourTiles(heightsOf: (tile: TileAddress) => Promise<Float32Array>, cellM: number, lat: number) {
  const manager = new contour.LocalDemManager({
    demUrlPattern: '{z}/{x}/{y}',
    cacheSize: 80,
    encoding: 'terrarium',
    maxzoom: finestZoom(cellM, lat),
    timeoutMs: 30_000,
  });
  manager.fetchAndParseTile = async (z, x, y) => ({
    width: TILE_SIZE,
    height: TILE_SIZE,
    data: await heightsOf({ z, x, y }),
  });
  return async ({ z, x, y }: TileAddress, units: UnitSystem): Promise<ArrayBuffer> => {
    const row = intervals.find(({ fromZoom }) => z >= fromZoom)!;
    const tile = await manager.fetchContourTile(
      z,
      x,
      y,
      { levels: row[units], multiplier: units === 'us' ? 1 / FOOT_M : 1, contourLayer: 'contours' },
      new AbortController(),
    );
    // The library keeps its tile; the copy may be handed over.
    return tile.arrayBuffer.slice(0);
  };
}
