import type { Grid } from './grid.ts';
import { columnAt, rowAt } from './place.ts';
import { layerAt, sampleLine } from './sample-line.ts';
import type { Ground } from './surface.ts';

/**
 * Heights along a straight line by cubic convolution (Keys 1981, a = −1/2), which keeps waves of a few cells that the
 * bilinear surface flattens. Same shapes as `sampleLine`. Beside missing cells and at the border of a layer the height is
 * bilinear; returns how many were. [source: keys1981]
 */
export function sampleLineCubic(
  ground: Ground,
  x0: number,
  y0: number,
  dx: number,
  dy: number,
  n: number,
  out: Float64Array,
  offset = 0,
): number {
  sampleLine(ground, x0, y0, dx, dy, n, out, offset);
  let bilinear = 0;
  for (let i = 0; i < n; i++) {
    if (Number.isNaN(out[offset + i])) continue;
    const x = x0 + i * dx;
    const y = y0 + i * dy;
    const { grid, fit } = ground.layers[ground.layers.length > 1 ? layerAt(ground, x, y) : 0];
    const height = cubic(grid, columnAt(fit, x, y), rowAt(fit, x, y));
    if (Number.isNaN(height)) bilinear++;
    else out[offset + i] = height;
  }
  return bilinear;
}

/** Cubic height at one point of the local plane, metres, bilinear where it must be; NaN where no layer has data. */
export function cubicAt(ground: Ground, x: number, y: number): number {
  sampleLineCubic(ground, x, y, 0, 0, 1, one, 0);
  return one[0];
}

const one = new Float64Array(1);
const across = new Float64Array(4);
const down = new Float64Array(4);

/** NaN where one of the sixteen cells is missing. */
function cubic({ width, height, data }: Grid, col: number, row: number): number {
  const ci = Math.floor(col);
  const ri = Math.floor(row);
  if (ci < 1 || ri < 1 || ci > width - 3 || ri > height - 3) return Number.NaN;
  weights(col - ci, across);
  weights(row - ri, down);
  let sum = 0;
  for (let r = 0; r < 4; r++) {
    const k = (ri - 1 + r) * width + ci - 1;
    sum +=
      down[r] * (across[0] * data[k] + across[1] * data[k + 1] + across[2] * data[k + 2] + across[3] * data[k + 3]);
  }
  return sum;
}

/** The four weights of Keys 1981, equation 15, at t between the two middle cells. */
function weights(t: number, out: Float64Array): void {
  out[0] = t * (-0.5 + t * (1 - 0.5 * t));
  out[1] = 1 + t * t * (-2.5 + 1.5 * t);
  out[2] = t * (0.5 + t * (2 - 1.5 * t));
  out[3] = t * t * (-0.5 + 0.5 * t);
}
