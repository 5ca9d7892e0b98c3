import type { LonLatBox } from '../../io/index.ts';
import { toDegrees, toRadians } from '../../units/index.ts';

/** A square of the web map's grid: zoom, column from the west, row from the north. */
export interface TileAddress {
  readonly z: number;
  readonly x: number;
  readonly y: number;
}

/** Pixels along one side of a ground tile. */
export const TILE_SIZE = 256;
/** Length of the equator on the web map's sphere, metres. */
const EQUATOR_M = 2 * Math.PI * 6378137;

/** Longitude, degrees, of a place `pixel` pixels right of a tile's left side. */
export const lonAt = ({ z, x }: TileAddress, pixel: number): number => ((x + pixel / TILE_SIZE) / 2 ** z) * 360 - 180;

/** Latitude, degrees, of a place `pixel` pixels below a tile's upper side (spherical Mercator, inverse). */
export function latAt({ z, y }: TileAddress, pixel: number): number {
  const n = Math.PI * (1 - (2 * (y + pixel / TILE_SIZE)) / 2 ** z);
  return toDegrees(Math.atan(Math.sinh(n)));
}

/** Box of a tile grown by `margin` pixels on each side. */
export const tileBox = (tile: TileAddress, margin = 0): LonLatBox => ({
  west: lonAt(tile, -margin),
  east: lonAt(tile, TILE_SIZE + margin),
  north: latAt(tile, -margin),
  south: latAt(tile, TILE_SIZE + margin),
});

/** Metres on the ground that a pixel of a tile covers, at its middle. */
export const pixelM = (tile: TileAddress): number =>
  (EQUATOR_M * Math.cos(toRadians(latAt(tile, TILE_SIZE / 2)))) / (TILE_SIZE * 2 ** tile.z);

/** The zoom at which a tile's pixel is no larger than a cell: finer tiles would show nothing more. */
export function finestZoom(cellM: number, lat: number): number {
  const z = Math.log2((EQUATOR_M * Math.cos(toRadians(lat))) / (TILE_SIZE * cellM));
  return Math.min(18, Math.max(1, Math.ceil(z - 0.9)));
}
