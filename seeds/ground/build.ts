import type { Grid } from '../../src/terrain/index.ts';
import { forCellsByCreek } from '../land/creek.ts';
import type { Natural } from '../land/natural.ts';
import { area } from '../recipe.ts';
import { layRoads, stationsNear } from '../road/lay.ts';
import type { Line } from '../road/line.ts';
import type { RoadDesign } from '../road/road-design.ts';
import { APRON, FINE_M, type FineGround, keys, TILE, TILE_STRIDE, tileOrigin } from './tiles.ts';

/** The 0.5 m ground reaches this far from every road, metres: as far as nearly every descent. */
const REACH_M = 200;

/** Builds the ground with its roads: natural ground drawn finer by cubic convolution, benches, fills and cuts laid on it. */
export function buildGround(
  { ground: natural, waves, uneven }: Natural,
  roads: readonly RoadDesign[],
  creek: Line,
): FineGround {
  const side = TILE * FINE_M;
  const columns = (area.east - area.west) / side;
  const rows = (area.north - area.south) / side;
  const near = stationsNear(roads);
  const tiles: (Float32Array | null)[] = [];
  for (let tile = 0; tile < columns * rows; tile++) {
    const { x, y } = tileOrigin(area, columns, tile);
    if (!near(x + side / 2, y - side / 2, REACH_M + side * 0.71).length) {
      tiles.push(null);
      continue;
    }
    const heights = finer(natural, x, y);
    const cells = {
      heights,
      waves: finer(waves, x, y),
      uneven: finer(uneven, x, y),
      ...creekBanks(creek, x, y),
    };
    layRoads(cells, { x, y, stride: TILE_STRIDE }, near);
    tiles.push(heights);
  }
  return { box: area, columns, rows, tiles, natural };
}

/** Steepest bank of the creek, tangent: from 0.5 to 1.05, wandering along it. */
const bankSlope = (stationM: number): number =>
  0.78 + 0.18 * Math.sin(stationM / 83) + 0.1 * Math.sin(stationM / 29 + 1);

/** How high the banks of the creek may stand in a tile, metres, up to 45 m off (then Infinity); and on which side a cell lies. */
function creekBanks(creek: Line, x: number, y: number): { banks: Float32Array; creekSide: Int8Array } {
  const banks = new Float32Array(TILE_STRIDE * TILE_STRIDE).fill(Number.POSITIVE_INFINITY);
  const creekSide = new Int8Array(banks.length);
  const grid = { width: TILE_STRIDE, height: TILE_STRIDE, data: banks, x0: x, y0: y, stepX: FINE_M, stepY: FINE_M };
  forCellsByCreek(creek, grid, 90, (i, { offsetM, bedM, stationM }) => {
    creekSide[i] = offsetM > 0 ? 1 : -1;
    const away = Math.abs(offsetM);
    if (away < 45) banks[i] = bedM + 1 + Math.max(0, away - 7) * bankSlope(stationM);
  });
  return { banks, creekSide };
}

/** A tile of 0.5 m point heights out of 1 m ones; (x, y) is the centre of its first cell. */
function finer(grid: Grid, x: number, y: number): Float32Array {
  const out = new Float32Array(TILE_STRIDE * TILE_STRIDE);
  const line = new Float64Array(grid.width);
  const w = new Float64Array(4);
  const firstColumn = (x - grid.x0) / grid.stepX;
  const left = Math.max(0, Math.floor(firstColumn) - 2);
  const right = Math.min(grid.width - 1, Math.ceil(firstColumn + TILE_STRIDE * FINE_M) + 2);
  for (let r = 0; r < TILE_STRIDE; r++) {
    const row = (grid.y0 - (y - r * FINE_M)) / grid.stepY;
    const j = Math.floor(row);
    keys(row - j, w);
    for (let c = left; c <= right; c++) {
      let sum = 0;
      for (let b = 0; b < 4; b++) {
        sum += w[b] * grid.data[Math.min(grid.height - 1, Math.max(0, j + b - 1)) * grid.width + c];
      }
      line[c] = sum;
    }
    for (let c = 0; c < TILE_STRIDE; c++) {
      const col = firstColumn + c * FINE_M;
      const i = Math.floor(col);
      keys(col - i, w);
      let sum = 0;
      for (let a = 0; a < 4; a++) sum += w[a] * line[Math.min(grid.width - 1, Math.max(0, i + a - 1))];
      out[r * TILE_STRIDE + c] = sum;
    }
  }
  return out;
}

/** Means over 1 m cells of the fine ground, and of the natural ground elsewhere; metres over the area. */
export function meanCells(ground: FineGround, into: Grid): void {
  const { natural, tiles, columns } = ground;
  smoothToMeans(natural, into);
  const half = TILE / 2;
  for (let t = 0; t < tiles.length; t++) {
    const tile = tiles[t];
    if (!tile) continue;
    const left = (t % columns) * half;
    const top = Math.floor(t / columns) * half;
    for (let r = 0; r < half; r++) {
      let at = (2 * r + APRON) * TILE_STRIDE + APRON;
      for (let c = 0; c < half; c++, at += 2) {
        into.data[(top + r) * into.width + left + c] =
          (tile[at] + tile[at + 1] + tile[at + TILE_STRIDE] + tile[at + TILE_STRIDE + 1]) / 4;
      }
    }
  }
}

/** The mean of the cubic through point heights over a cell's four quarters, as two passes of one five-number filter. */
function smoothToMeans(from: Grid, into: Grid): void {
  const { width, height } = from;
  const near = 0.078125;
  const far = -0.01171875;
  const middle = 1 - 2 * near - 2 * far;
  const rows = new Float32Array(from.data.length);
  for (let r = 0; r < height; r++) {
    const at = r * width;
    const value = (c: number) => from.data[at + Math.min(width - 1, Math.max(0, c))];
    for (let c = 0; c < width; c++) {
      rows[at + c] =
        middle * from.data[at + c] + near * (value(c - 1) + value(c + 1)) + far * (value(c - 2) + value(c + 2));
    }
  }
  for (let r = 0; r < height; r++) {
    const line = (k: number) => Math.min(height - 1, Math.max(0, r + k)) * width;
    const [a, b, m, d, e] = [line(-2), line(-1), line(0), line(1), line(2)];
    for (let c = 0; c < width; c++) {
      into.data[m + c] = middle * rows[m + c] + near * (rows[b + c] + rows[d + c]) + far * (rows[a + c] + rows[e + c]);
    }
  }
}
