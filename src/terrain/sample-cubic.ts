import type { Grid } from './grid.ts';
import { sampleLine } from './sample-line.ts';
import type { Ground } from './surface.ts';

/**
 * Heights along a straight line by cubic convolution (Keys 1981, a = −1/2), which keeps waves of a few cells that the
 * bilinear surface flattens. Same shapes as `sampleLine`; bilinear beside missing cells and at the border of a layer.
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
): void {
  sampleLine(ground, x0, y0, dx, dy, n, out, offset);
  for (let i = 0; i < n; i++) {
    if (Number.isNaN(out[offset + i])) continue;
    const x = x0 + i * dx;
    const y = y0 + i * dy;
    for (const { grid, fit } of ground.layers) {
      const col = fit[0] + fit[1] * x + fit[2] * y + fit[3] * x * y;
      const row = fit[4] + fit[5] * x + fit[6] * y + fit[7] * x * y;
      if (!hasBilinear(grid, col, row)) continue;
      const height = cubic(grid, col, row);
      if (!Number.isNaN(height)) out[offset + i] = height;
      break;
    }
  }
}

/** Cubic height at one point, metres; NaN where no layer has data. */
export function cubicAt(ground: Ground, x: number, y: number): number {
  sampleLineCubic(ground, x, y, 0, 0, 1, one, 0);
  return one[0];
}

const one = new Float64Array(1);
const across = new Float64Array(4);
const down = new Float64Array(4);

/** True where the four cells around a point have data: this layer answers. */
function hasBilinear({ width, height, data }: Grid, col: number, row: number): boolean {
  if (!(col >= 0 && row >= 0 && col <= width - 1 && row <= height - 1)) return false;
  const ci = Math.min(Math.floor(col), width - 2);
  const ri = Math.min(Math.floor(row), height - 2);
  const k = ri * width + ci;
  return !Number.isNaN(data[k] + data[k + 1] + data[k + width] + data[k + width + 1]);
}

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
