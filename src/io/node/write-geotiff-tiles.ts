import { promisify } from 'node:util';
import { constants, deflate } from 'node:zlib';
import type { Grid } from '../../terrain/index.ts';

const compress = promisify(deflate);

/** The compressed tiles of one image, row-major; `offsets` are filled in when the file is laid out. */
export interface Tiles {
  readonly blocks: Uint8Array[];
  readonly offsets: number[];
}

/** Tiles in flight at once: as many as zlib has threads. */
const AT_ONCE = 4;

/** Cuts an image into square tiles and compresses them; NaN and what lies past the border become `noData`. */
export async function compressTiles(grid: Grid, size: number, noData: number, level: number): Promise<Tiles> {
  const across = Math.ceil(grid.width / size);
  const down = Math.ceil(grid.height / size);
  const blocks = new Array<Uint8Array>(across * down);
  let next = 0;
  const worker = async () => {
    while (next < blocks.length) {
      const t = next++;
      const cells = cutTile(grid, size, t % across, Math.floor(t / across), noData);
      blocks[t] = await compressTile(cells, size, level);
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, worker));
  return { blocks, offsets: [] };
}

/** One tile's cells (row-major, `size` a side) as the file holds them: floating-point predictor, deflate. */
export const compressTile = (cells: Float32Array, size: number, level: number): Promise<Uint8Array> =>
  compress(predicted(cells, size), { level, strategy: constants.Z_FILTERED });

function cutTile(grid: Grid, size: number, column: number, row: number, noData: number): Float32Array {
  const out = new Float32Array(size * size).fill(noData);
  const left = column * size;
  const top = row * size;
  const width = Math.min(size, grid.width - left);
  const height = Math.min(size, grid.height - top);
  for (let r = 0; r < height; r++) {
    const from = (top + r) * grid.width + left;
    for (let c = 0; c < width; c++) {
      const value = grid.data[from + c];
      if (!Number.isNaN(value)) out[r * size + c] = value;
    }
  }
  return out;
}

/**
 * The floating-point predictor (TIFF Technical Note 3, predictor 3): each row's bytes are gathered by weight, the heaviest
 * first, then every byte is replaced by its difference from the one before.
 */
export function predicted(cells: Float32Array, width: number): Uint8Array {
  const bytes = new Uint8Array(cells.buffer, cells.byteOffset, cells.byteLength);
  const out = new Uint8Array(bytes.length);
  const rowBytes = width * 4;
  for (let at = 0; at < bytes.length; at += rowBytes) {
    let before = 0;
    for (let plane = 3; plane >= 0; plane--) {
      const to = at + (3 - plane) * width;
      for (let c = 0; c < width; c++) {
        const byte = bytes[at + c * 4 + plane];
        out[to + c] = byte - before;
        before = byte;
      }
    }
  }
  return out;
}
