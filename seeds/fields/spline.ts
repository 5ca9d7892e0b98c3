import type { Grid } from '../../src/terrain/index.ts';

/**
 * Value of the uniform cubic B-spline over a grid's cells, at a point in the grid's CRS. It is smooth to the second
 * derivative and rounds single cells off a little, which is wanted of a coarse lattice; outside, the border cells go on.
 */
export function splineAt(grid: Grid, x: number, y: number): number {
  const col = (x - grid.x0) / grid.stepX;
  const row = (grid.y0 - y) / grid.stepY;
  const i = Math.floor(col);
  const j = Math.floor(row);
  weights(col - i, weightX);
  weights(row - j, weightY);
  const { data, width, height } = grid;
  let sum = 0;
  for (let b = 0; b < 4; b++) {
    const r = Math.min(height - 1, Math.max(0, j + b - 1)) * width;
    let line = 0;
    for (let a = 0; a < 4; a++) line += weightX[a] * data[r + Math.min(width - 1, Math.max(0, i + a - 1))];
    sum += weightY[b] * line;
  }
  return sum;
}

/** Adds `scale` times the spline over `lattice` to every cell of `target`; both in one CRS. */
export function addSpline(target: Grid, lattice: Grid, scale = 1): void {
  const columns = new Int32Array(target.width * 4);
  const columnWeights = new Float64Array(target.width * 4);
  for (let c = 0; c < target.width; c++) {
    const col = (target.x0 + c * target.stepX - lattice.x0) / lattice.stepX;
    const i = Math.floor(col);
    weights(col - i, weightX);
    for (let a = 0; a < 4; a++) {
      columns[c * 4 + a] = Math.min(lattice.width - 1, Math.max(0, i + a - 1));
      columnWeights[c * 4 + a] = weightX[a];
    }
  }
  const line = new Float64Array(lattice.width);
  for (let r = 0; r < target.height; r++) {
    const row = (lattice.y0 - (target.y0 - r * target.stepY)) / lattice.stepY;
    const j = Math.floor(row);
    weights(row - j, weightY);
    line.fill(0);
    for (let b = 0; b < 4; b++) {
      const from = Math.min(lattice.height - 1, Math.max(0, j + b - 1)) * lattice.width;
      const w = weightY[b] * scale;
      for (let i = 0; i < lattice.width; i++) line[i] += w * lattice.data[from + i];
    }
    const out = r * target.width;
    for (let c = 0, k = 0; c < target.width; c++, k += 4) {
      target.data[out + c] +=
        columnWeights[k] * line[columns[k]] +
        columnWeights[k + 1] * line[columns[k + 1]] +
        columnWeights[k + 2] * line[columns[k + 2]] +
        columnWeights[k + 3] * line[columns[k + 3]];
    }
  }
}

const weightX = new Float64Array(4);
const weightY = new Float64Array(4);

function weights(t: number, out: Float64Array): void {
  const u = 1 - t;
  out[0] = (u * u * u) / 6;
  out[1] = (3 * t * t * t - 6 * t * t + 4) / 6;
  out[2] = (3 * u * u * u - 6 * u * u + 4) / 6;
  out[3] = (t * t * t) / 6;
}
