import type { Grid } from './grid.ts';
import type { Ground } from './surface.ts';

/**
 * Heights along a straight line of the local plane, bilinear between cell centres: at (x0 + i·dx, y0 + i·dy), i from 0 to
 * n − 1, into out[offset + i], metres. The finest layer with data at a point answers; where none has, NaN. Nothing is
 * allocated.
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
  const c0 = fit[0];
  const cx = fit[1];
  const cy = fit[2];
  const cxy = fit[3];
  const r0 = fit[4];
  const rx = fit[5];
  const ry = fit[6];
  const rxy = fit[7];
  const lastColumn = width - 1;
  const lastRow = height - 1;
  for (let i = 0; i < n; i++) {
    const x = x0 + i * dx;
    const y = y0 + i * dy;
    const col = c0 + cx * x + cy * y + cxy * x * y;
    const row = r0 + rx * x + ry * y + rxy * x * y;
    if (!(col >= 0 && row >= 0 && col <= lastColumn && row <= lastRow)) {
      out[offset + i] = Number.NaN;
      continue;
    }
    // The last centre belongs to the cell before it, with weight one.
    const ci = col < lastColumn ? Math.floor(col) : lastColumn - 1;
    const ri = row < lastRow ? Math.floor(row) : lastRow - 1;
    const a = col - ci;
    const b = row - ri;
    const k = ri * width + ci;
    const north = data[k] + a * (data[k + 1] - data[k]);
    const south = data[k + width] + a * (data[k + width + 1] - data[k + width]);
    out[offset + i] = north + b * (south - north);
  }
}
