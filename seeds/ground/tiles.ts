import type { Grid } from '../../src/terrain/index.ts';
import type { Box } from '../fields/raster.ts';

/** Cells of a tile, without its apron, and the apron's cells on each side. */
export const TILE = 256;
export const APRON = 2;
const STRIDE = TILE + 2 * APRON;
/** Cell of the fine ground, metres. */
export const FINE_M = 0.5;

/**
 * Point heights of the ground every 0.5 m near the roads, and the 1 m natural ground (point heights too) elsewhere.
 * Tiles are row-major, north row first, TILE cells and an apron of APRON cells around, so that a cubic kernel stays inside.
 */
export interface FineGround {
  readonly box: Box;
  readonly columns: number;
  readonly rows: number;
  readonly tiles: readonly (Float32Array | null)[];
  readonly natural: Grid;
}

/** Centre of cell (col, row) of a tile, apron included: CRS metres of its first cell. */
export function tileOrigin(box: Box, columns: number, tile: number): { x: number; y: number } {
  const side = TILE * FINE_M;
  return {
    x: box.west + (tile % columns) * side + (0.5 - APRON) * FINE_M,
    y: box.north - Math.floor(tile / columns) * side - (0.5 - APRON) * FINE_M,
  };
}

export { STRIDE as TILE_STRIDE };

/**
 * Height of the ground at a point, metres, by cubic convolution (Keys 1981, a = −½) of the 0.5 m heights, or of the 1 m
 * heights away from the roads. NaN outside the area.
 */
export function groundAt(ground: FineGround, x: number, y: number): number {
  const side = TILE * FINE_M;
  const { box } = ground;
  const c = Math.floor((x - box.west) / side);
  const r = Math.floor((box.north - y) / side);
  if (c < 0 || r < 0 || c >= ground.columns || r >= ground.rows) return Number.NaN;
  const tile = ground.tiles[r * ground.columns + c];
  if (!tile) return cubicAt(ground.natural, x, y);
  const col = (x - box.west - c * side) / FINE_M - 0.5 + APRON;
  const row = (box.north - y - r * side) / FINE_M - 0.5 + APRON;
  return cubic(tile, STRIDE, STRIDE, col, row);
}

/** Cubic convolution in a grid, CRS metres; border cells go on. */
export const cubicAt = (grid: Grid, x: number, y: number): number =>
  cubic(grid.data, grid.width, grid.height, (x - grid.x0) / grid.stepX, (grid.y0 - y) / grid.stepY);

const wx = new Float64Array(4);
const wy = new Float64Array(4);

function cubic(data: ArrayLike<number>, width: number, height: number, col: number, row: number): number {
  const i = Math.floor(col);
  const j = Math.floor(row);
  keys(col - i, wx);
  keys(row - j, wy);
  let sum = 0;
  for (let b = 0; b < 4; b++) {
    const at = Math.min(height - 1, Math.max(0, j + b - 1)) * width;
    let line = 0;
    for (let a = 0; a < 4; a++) line += wx[a] * data[at + Math.min(width - 1, Math.max(0, i + a - 1))];
    sum += wy[b] * line;
  }
  return sum;
}

/** Weights of cubic convolution for a share `t` past the second of four samples (Keys 1981, eq. 4, a = −½). */
export function keys(t: number, out: Float64Array): void {
  const t2 = t * t;
  const t3 = t2 * t;
  out[0] = -0.5 * t3 + t2 - 0.5 * t;
  out[1] = 1.5 * t3 - 2.5 * t2 + 1;
  out[2] = -1.5 * t3 + 2 * t2 + 0.5 * t;
  out[3] = 0.5 * t3 - 0.5 * t2;
}
