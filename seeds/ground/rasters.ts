import type { Grid } from '../../src/terrain/index.ts';
import { emptyGrid } from '../fields/raster.ts';
import { APRON, FINE_M, type FineGround, TILE, TILE_STRIDE } from './tiles.ts';

/** The coarse grid with the means of the fine heights where their 1 m cells fill a coarse cell whole. */
export function coarseCells(wide: Grid, heights: Grid): Grid {
  const data = Float32Array.from(wide.data);
  const ratio = Math.round(wide.stepX / heights.stepX);
  const left = Math.round((heights.x0 - heights.stepX / 2 - (wide.x0 - wide.stepX / 2)) / wide.stepX);
  const top = Math.round((wide.y0 + wide.stepY / 2 - (heights.y0 + heights.stepY / 2)) / wide.stepY);
  for (let r = 0; r < Math.floor(heights.height / ratio); r++) {
    for (let c = 0; c < Math.floor(heights.width / ratio); c++) {
      let sum = 0;
      for (let y = 0; y < ratio; y++) {
        const at = (r * ratio + y) * heights.width + c * ratio;
        for (let x = 0; x < ratio; x++) sum += heights.data[at + x];
      }
      if (!Number.isNaN(sum)) data[(top + r) * wide.width + left + c] = sum / (ratio * ratio);
    }
  }
  return { ...wide, data };
}

/** The 0.5 m tiles as one raster, NaN where there are none. */
export function fineRaster({ box, columns, tiles }: FineGround): Grid {
  const grid = emptyGrid(box, FINE_M);
  grid.data.fill(Number.NaN);
  tiles.forEach((tile, t) => {
    if (!tile) return;
    const left = (t % columns) * TILE;
    const top = Math.floor(t / columns) * TILE;
    for (let r = 0; r < TILE; r++) {
      const from = (r + APRON) * TILE_STRIDE + APRON;
      grid.data.set(tile.subarray(from, from + TILE), (top + r) * grid.width + left);
    }
  });
  return grid;
}
