import type { Grid } from './grid.ts';
import { ON_BORDER } from './place.ts';
import type { Ground } from './surface.ts';

/**
 * Heights along a straight line of the local plane, bilinear between cell centres: at (x0 + i·dx, y0 + i·dy), i from 0 to
 * n − 1, into out[offset + i], metres. The finest layer with data at a point answers; where none has, NaN: so it is beyond
 * the outer cell centres and in every square of four centres with one missing. Nothing is allocated.
 */
export function sampleLine(
  ground: Ground,
  x0: number,
  y0: number,
  dx: number,
  dy: number,
  n: number,
  out: Float64Array,
  offset = 0,
): void {
  const { layers } = ground;
  if (layers.length === 0) {
    out.fill(Number.NaN, offset, offset + n);
    return;
  }
  bilinearLine(layers[0].grid, layers[0].fit, x0, y0, dx, dy, n, out, offset);
  for (let k = 1; k < layers.length; k++) {
    const { grid, fit } = layers[k];
    for (let i = 0; i < n; i++) {
      if (!Number.isNaN(out[offset + i])) continue;
      bilinearLine(grid, fit, x0 + i * dx, y0 + i * dy, 0, 0, 1, out, offset + i);
    }
  }
}

/** Bilinear height at one point of the local plane, metres; NaN where no layer has data. */
export function heightAt(ground: Ground, x: number, y: number): number {
  sampleLine(ground, x, y, 0, 0, 1, one, 0);
  return one[0];
}

const one = new Float64Array(1);

/** Index of the layer that answers at a point, −1 where none has data. */
export function layerAt({ layers }: Ground, x: number, y: number): number {
  for (let k = 0; k < layers.length; k++) {
    bilinearLine(layers[k].grid, layers[k].fit, x, y, 0, 0, 1, one, 0);
    if (!Number.isNaN(one[0])) return k;
  }
  return -1;
}

/** `sampleLine` on one layer. Along a line the placement is a quadratic in i: c0 + c1·i + c2·i². */
function bilinearLine(
  { width, height, data }: Grid,
  fit: Float64Array,
  x0: number,
  y0: number,
  dx: number,
  dy: number,
  n: number,
  out: Float64Array,
  offset: number,
): void {
  const c0 = fit[0] + (fit[1] + fit[3] * y0 + fit[8] * x0) * x0 + (fit[2] + fit[9] * y0) * y0;
  const c1 = fit[1] * dx + fit[2] * dy + fit[3] * (x0 * dy + y0 * dx) + 2 * (fit[8] * x0 * dx + fit[9] * y0 * dy);
  const c2 = fit[3] * dx * dy + fit[8] * dx * dx + fit[9] * dy * dy;
  const r0 = fit[4] + (fit[5] + fit[7] * y0 + fit[10] * x0) * x0 + (fit[6] + fit[11] * y0) * y0;
  const r1 = fit[5] * dx + fit[6] * dy + fit[7] * (x0 * dy + y0 * dx) + 2 * (fit[10] * x0 * dx + fit[11] * y0 * dy);
  const r2 = fit[7] * dx * dy + fit[10] * dx * dx + fit[11] * dy * dy;
  const lastColumn = width - 1;
  const lastRow = height - 1;
  for (let i = 0; i < n; i++) {
    let col = c0 + (c1 + c2 * i) * i;
    let row = r0 + (r1 + r2 * i) * i;
    if (!(col >= 0 && row >= 0 && col < lastColumn && row < lastRow)) {
      if (
        !(col > -ON_BORDER && row > -ON_BORDER && col < lastColumn + ON_BORDER && row < lastRow + ON_BORDER) ||
        lastColumn < 1 ||
        lastRow < 1
      ) {
        out[offset + i] = Number.NaN;
        continue;
      }
      col = Math.min(Math.max(col, 0), lastColumn);
      row = Math.min(Math.max(row, 0), lastRow);
    }
    // The last centre belongs to the cell before it, with weight one.
    const ci = col < lastColumn ? col | 0 : lastColumn - 1;
    const ri = row < lastRow ? row | 0 : lastRow - 1;
    const a = col - ci;
    const k = ri * width + ci;
    const north = data[k] + a * (data[k + 1] - data[k]);
    const south = data[k + width] + a * (data[k + width + 1] - data[k + width]);
    out[offset + i] = north + (row - ri) * (south - north);
  }
}
