import type { LocalPlane } from '../geo/index.ts';
import type { Grid } from './grid.ts';
import { COLUMN_TERMS, columnAt, PLACE_TERMS, ROW_TERMS, rowAt } from './place.ts';
import type { GroundLayer, SurfaceInfo } from './surface.ts';

/** Longitude and latitude in degrees to the raster's own coordinates. */
export type ToRaster = (lon: number, lat: number) => [x: number, y: number];

/** Largest departure of the fitted placement from the true one, metres. */
const RESIDUAL_M = 0.01;
const CONTROL = 5;
const TERMS = 6;

/**
 * Places a raster window on a local plane: column and row as quadratic functions of plane metres, fitted once by least
 * squares on a 5 × 5 control grid over the box (metres; west, south, east, north) and checked half-way between its points to
 * 1 cm. Square terms are there for the curved parallels of geographic and conic systems, which a bilinear fit leaves 1 cm
 * off at 300 m. Throws a RangeError where the window is too large for that (several kilometres).
 */
export function fitLayer(
  info: SurfaceInfo,
  grid: Grid,
  plane: LocalPlane,
  box: { west: number; south: number; east: number; north: number },
  toRaster: ToRaster,
): GroundLayer {
  const midX = (box.west + box.east) / 2;
  const midY = (box.south + box.north) / 2;
  const halfX = (box.east - box.west) / 2;
  const halfY = (box.north - box.south) / 2;
  const toCell = (x: number, y: number): [number, number] => {
    const { lon, lat } = plane.toLonLat({ x, y });
    const [rx, ry] = toRaster(lon, lat);
    return [(rx - grid.x0) / grid.stepX, (grid.y0 - ry) / grid.stepY];
  };
  const points: [u: number, v: number, col: number, row: number][] = [];
  for (let i = 0; i < CONTROL; i++) {
    for (let j = 0; j < CONTROL; j++) {
      const u = (2 * i) / (CONTROL - 1) - 1;
      const v = (2 * j) / (CONTROL - 1) - 1;
      points.push([u, v, ...toCell(midX + u * halfX, midY + v * halfY)]);
    }
  }
  const fit = new Float64Array(PLACE_TERMS);
  spread(leastSquares(points, 2), midX, midY, halfX, halfY, fit, COLUMN_TERMS);
  spread(leastSquares(points, 3), midX, midY, halfX, halfY, fit, ROW_TERMS);
  check();
  return { info, grid, fit };

  function check(): void {
    for (let i = 0; i < CONTROL - 1; i++) {
      for (let j = 0; j < CONTROL - 1; j++) {
        const x = midX + ((2 * i + 1) / (CONTROL - 1) - 1) * halfX;
        const y = midY + ((2 * j + 1) / (CONTROL - 1) - 1) * halfY;
        const [col, row] = toCell(x, y);
        const offM = Math.hypot(columnAt(fit, x, y) - col, rowAt(fit, x, y) - row) * info.cellM;
        if (!(offM < RESIDUAL_M)) {
          throw new RangeError(
            `The window of ${info.source} cannot be placed to 1 cm (off by ${offM.toFixed(3)} m); read a smaller one.`,
          );
        }
      }
    }
  }
}

/** Coefficients of 1, u, v, uv, u², v² by normal equations; `which` is the column of `points` that is fitted. */
function leastSquares(points: readonly (readonly number[])[], which: number): number[] {
  const matrix = Array.from({ length: TERMS }, () => new Float64Array(TERMS + 1));
  for (const point of points) {
    const [u, v] = point;
    const terms = [1, u, v, u * v, u * u, v * v];
    for (let r = 0; r < TERMS; r++) {
      for (let c = 0; c < TERMS; c++) matrix[r][c] += terms[r] * terms[c];
      matrix[r][TERMS] += terms[r] * point[which];
    }
  }
  for (let p = 0; p < TERMS; p++) {
    for (let r = 0; r < TERMS; r++) {
      if (r === p) continue;
      const factor = matrix[r][p] / matrix[p][p];
      for (let c = p; c <= TERMS; c++) matrix[r][c] -= factor * matrix[p][c];
    }
  }
  return matrix.map((row, i) => row[TERMS] / row[i]);
}

/** Turns coefficients of u = (x − midX) ⁄ halfX and v = (y − midY) ⁄ halfY into those of x and y, at their places in `fit`. */
function spread(
  [one, u, v, uv, uu, vv]: readonly number[],
  midX: number,
  midY: number,
  halfX: number,
  halfY: number,
  fit: Float64Array,
  [f0, fx, fy, fxy, fxx, fyy]: readonly number[],
): void {
  const [a, b, c, d, e] = [u / halfX, v / halfY, uv / (halfX * halfY), uu / halfX ** 2, vv / halfY ** 2];
  fit[f0] = one - a * midX - b * midY + c * midX * midY + d * midX ** 2 + e * midY ** 2;
  fit[fx] = a - c * midY - 2 * d * midX;
  fit[fy] = b - c * midX - 2 * e * midY;
  fit[fxy] = c;
  fit[fxx] = d;
  fit[fyy] = e;
}
