import { addProtocol, removeProtocol } from 'maplibre-gl';
import type { UnitSystem } from '../units/index.ts';
import type { TileAddress } from '../workers/index.ts';

/** Where the map gets its ground from: a worker that reads the local raster. */
export interface GroundTiles {
  ground(tile: TileAddress, signal: AbortSignal): Promise<ImageBitmap>;
  contours(tile: TileAddress, units: UnitSystem, signal: AbortSignal): Promise<ArrayBuffer>;
}

/** A pair of tile addresses for one map; `issue` changes when other files are opened, so that no old tile is kept. */
export interface GroundProtocol {
  groundUrl(issue: number): string;
  contourUrl(issue: number, units: UnitSystem): string;
  remove(): void;
}

let maps = 0;

/** Lets MapLibre fetch ground and contour tiles from a worker; nothing goes over the network. */
export function groundProtocol(tiles: GroundTiles): GroundProtocol {
  const scheme = `ground${++maps}`;
  addProtocol(scheme, async ({ url }, abort) => {
    const [what, , units, z, x, y] = url.slice(scheme.length + 3).split('/');
    const tile = { z: Number(z), x: Number(x), y: Number(y) };
    const data =
      what === 'contours'
        ? await tiles.contours(tile, units as UnitSystem, abort.signal)
        : await tiles.ground(tile, abort.signal);
    return { data };
  });
  return {
    groundUrl: (issue) => `${scheme}://ground/${issue}/-/{z}/{x}/{y}`,
    contourUrl: (issue, units) => `${scheme}://contours/${issue}/${units}/{z}/{x}/{y}`,
    remove: () => removeProtocol(scheme),
  };
}
