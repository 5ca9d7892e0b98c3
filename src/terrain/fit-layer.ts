import type { LocalPlane } from '../geo/index.ts';
import type { Grid } from './grid.ts';
import type { GroundLayer, SurfaceInfo } from './surface.ts';

/** Longitude and latitude in degrees to the raster's own coordinates. */
export type ToRaster = (lon: number, lat: number) => [x: number, y: number];

/** Largest departure of the fitted placement from the true one, metres. */
const RESIDUAL_M = 0.01;
const CONTROL = 5;

/**
 * Places a raster window on a local plane: col and row as bilinear functions of plane metres, fitted once by least squares
 * on a 5 × 5 control grid over the box (metres; west, south, east, north) and checked half-way between its points to 1 cm.
 * Throws a RangeError where the window is too large for that.
 */
export function fitLayer(
  info: SurfaceInfo,
  grid: Grid,
  plane: LocalPlane,
  box: { west: number; south: number; east: number; north: number },
  toRaster: ToRaster,
): GroundLayer {
  const toCell = (x: number, y: number): [number, number] => {
    const { lon, lat } = plane.toLonLat({ x, y });
    const [rx, ry] = toRaster(lon, lat);
    return [(rx - grid.x0) / grid.stepX, (grid.y0 - ry) / grid.stepY];
  };
  const at = (i: number, n: number, a: number, b: number): number => a + ((b - a) * i) / n;
  const points: [number, number, number, number][] = [];
  for (let i = 0; i < CONTROL; i++) {
    for (let j = 0; j < CONTROL; j++) {
      const x = at(i, CONTROL - 1, box.west, box.east);
      const y = at(j, CONTROL - 1, box.south, box.north);
      points.push([x, y, ...toCell(x, y)]);
    }
  }
  const reach = Math.max(1, Math.abs(box.west), Math.abs(box.east), Math.abs(box.south), Math.abs(box.north));
  const fit = new Float64Array(8);
  for (const which of [0, 1] as const) fit.set(leastSquares(points, which, reach), which * 4);
  const cellM = info.cellM;
  for (let i = 0; i < CONTROL - 1; i++) {
    for (let j = 0; j < CONTROL - 1; j++) {
      const x = at(i + 0.5, CONTROL - 1, box.west, box.east);
      const y = at(j + 0.5, CONTROL - 1, box.south, box.north);
      const [col, row] = toCell(x, y);
      const offCol = fit[0] + fit[1] * x + fit[2] * y + fit[3] * x * y - col;
      const offRow = fit[4] + fit[5] * x + fit[6] * y + fit[7] * x * y - row;
      const offM = Math.hypot(offCol, offRow) * cellM;
      if (!(offM < RESIDUAL_M)) {
        throw new RangeError(
          `The window of ${info.source} cannot be placed to 1 cm (off by ${offM.toFixed(3)} m); read a smaller one.`,
        );
      }
    }
  }
  return { info, grid, fit };
}

/** Coefficients of 1, x, y, x·y by normal equations; x and y are scaled by `reach` to keep them well conditioned. */
function leastSquares(points: readonly [number, number, number, number][], which: 0 | 1, reach: number): number[] {
  const size = 4;
  const matrix = Array.from({ length: size }, () => new Float64Array(size + 1));
  for (const point of points) {
    const u = point[0] / reach;
    const v = point[1] / reach;
    const terms = [1, u, v, u * v];
    for (let r = 0; r < size; r++) {
      for (let c = 0; c < size; c++) matrix[r][c] += terms[r] * terms[c];
      matrix[r][size] += terms[r] * point[2 + which];
    }
  }
  for (let p = 0; p < size; p++) {
    for (let r = 0; r < size; r++) {
      if (r === p) continue;
      const factor = matrix[r][p] / matrix[p][p];
      for (let c = p; c <= size; c++) matrix[r][c] -= factor * matrix[p][c];
    }
  }
  const [a, b, c, d] = matrix.map((row, i) => row[size] / row[i]);
  return [a, b / reach, c / reach, d / (reach * reach)];
}
