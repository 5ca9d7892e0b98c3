import type { ElevationSource, MapGround } from '../../io/index.ts';
import { latAt, lonAt, pixelM, TILE_SIZE, type TileAddress, tileBox } from './tile-box.ts';

/** Pixels between the points at which the projection is worked out exactly; between them it is linear to millimetres. */
const CONTROL = 16;
const CONTROLS = TILE_SIZE / CONTROL + 1;

/**
 * Heights at the pixel centres of a map tile, metres: Float32Array, row-major, north row first, NaN where no source has
 * ground. `sources` are finest first and the first that has ground wins. For the eye only.
 */
export async function tileHeights(
  sources: readonly ElevationSource[],
  tile: TileAddress,
  signal?: AbortSignal,
): Promise<Float32Array> {
  const heights = new Float32Array(TILE_SIZE * TILE_SIZE).fill(Number.NaN);
  const box = tileBox(tile, 2);
  for (const source of sources) {
    const ground = await source.readForMap(box, pixelM(tile), signal);
    if (ground && fill(heights, ground, tile) === 0) break;
  }
  return heights;
}

/** Fills what is still missing from one source; returns how many pixels remain without ground. */
function fill(heights: Float32Array, ground: MapGround, tile: TileAddress): number {
  const cols = new Float64Array(CONTROLS * CONTROLS);
  const rows = new Float64Array(CONTROLS * CONTROLS);
  for (let j = 0; j < CONTROLS; j++) {
    for (let i = 0; i < CONTROLS; i++) {
      const { col, row } = ground.toIndex({ lon: lonAt(tile, i * CONTROL), lat: latAt(tile, j * CONTROL) });
      cols[j * CONTROLS + i] = col;
      rows[j * CONTROLS + i] = row;
    }
  }
  let missing = 0;
  for (let py = 0; py < TILE_SIZE; py++) {
    const v = (py + 0.5) / CONTROL;
    const j = Math.floor(v);
    for (let px = 0; px < TILE_SIZE; px++) {
      const at = py * TILE_SIZE + px;
      if (!Number.isNaN(heights[at]!)) continue;
      const u = (px + 0.5) / CONTROL;
      const i = Math.floor(u);
      const k = j * CONTROLS + i;
      const height = bilinear(ground.grid, between(cols, k, u - i, v - j), between(rows, k, u - i, v - j));
      heights[at] = height;
      if (Number.isNaN(height)) missing++;
    }
  }
  return missing;
}

/** Bilinear reading of a control field inside the cell whose first corner is `k`. */
function between(field: Float64Array, k: number, u: number, v: number): number {
  const top = field[k]! + u * (field[k + 1]! - field[k]!);
  const bottom = field[k + CONTROLS]! + u * (field[k + CONTROLS + 1]! - field[k + CONTROLS]!);
  return top + v * (bottom - top);
}

/** Bilinear height; half a cell past the outer centres still counts as ground, NaN beyond or beside no data. */
function bilinear({ width, height, data }: MapGround['grid'], col: number, row: number): number {
  if (!(col >= -0.5 && row >= -0.5 && col <= width - 0.5 && row <= height - 0.5)) return Number.NaN;
  const c = Math.min(Math.max(col, 0), width - 1);
  const r = Math.min(Math.max(row, 0), height - 1);
  const i = Math.min(Math.floor(c), Math.max(0, width - 2));
  const j = Math.min(Math.floor(r), Math.max(0, height - 2));
  const right = Math.min(1, width - 1);
  const down = height > 1 ? width : 0;
  const k = j * width + i;
  const top = data[k]! + (c - i) * (data[k + right]! - data[k]!);
  const bottom = data[k + down]! + (c - i) * (data[k + down + right]! - data[k + down]!);
  return top + (r - j) * (bottom - top);
}
