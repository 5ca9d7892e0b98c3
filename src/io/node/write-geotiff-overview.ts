import type { Grid } from '../../terrain/index.ts';

/** The grid at twice the cell size: means of the two by two cells that have data, NaN where none has. */
export function averaged(grid: Grid): Grid {
  const width = Math.ceil(grid.width / 2);
  const height = Math.ceil(grid.height / 2);
  const data = new Float32Array(width * height);
  for (let r = 0; r < height; r++) {
    const bottom = Math.min(grid.height, 2 * r + 2);
    for (let c = 0; c < width; c++) {
      const right = Math.min(grid.width, 2 * c + 2);
      let sum = 0;
      let count = 0;
      for (let y = 2 * r; y < bottom; y++) {
        for (let x = 2 * c; x < right; x++) {
          const value = grid.data[y * grid.width + x];
          if (Number.isNaN(value)) continue;
          sum += value;
          count++;
        }
      }
      data[r * width + c] = count ? sum / count : Number.NaN;
    }
  }
  return {
    width,
    height,
    data,
    x0: grid.x0 + grid.stepX / 2,
    y0: grid.y0 - grid.stepY / 2,
    stepX: grid.stepX * 2,
    stepY: grid.stepY * 2,
  };
}
