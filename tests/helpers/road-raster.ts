import { localPlane } from '../../src/geo/index.ts';
import type { Grid, Ground, SurfaceInfo } from '../../src/terrain/index.ts';
import type { Random } from '../../src/units/index.ts';

/** Cells are made this far beyond a road, metres; a section reaches 40 m and a smoothed line a little beside. */
const MARGIN_M = 60;
const REACH_M = 56;

/** What the cells of a made road carry. */
export interface CellSpec {
  readonly cellM: number;
  readonly noiseM: number;
  readonly noiseLengthM: number;
}

/** Cells around a road line, each the mean of 2 × 2 sub-samples as lidar rasters average their returns, plus noise. */
export function rasterise(
  spec: CellSpec,
  px: Float64Array,
  py: Float64Array,
  heightAt: (x: number, y: number) => number,
  random: Random,
): Ground {
  const cell = spec.cellM;
  const x0 = Math.min(...px) - MARGIN_M;
  const y0 = Math.max(...py) + MARGIN_M;
  const width = Math.ceil((Math.max(...px) + MARGIN_M - x0) / cell);
  const height = Math.ceil((y0 - Math.min(...py) + MARGIN_M) / cell);
  const noise = correlatedNoise(width, height, spec.noiseM, spec.noiseLengthM / cell, random);
  const data = new Float32Array(width * height);
  const near = nearLine(px, py, x0, y0, cell, width, height);
  const quarter = cell / 4;
  for (let row = 0; row < height; row++) {
    for (let col = 0; col < width; col++) {
      const i = row * width + col;
      if (!near[i]) {
        data[i] = Number.NaN;
        continue;
      }
      const x = x0 + col * cell;
      const y = y0 - row * cell;
      const mean =
        (heightAt(x - quarter, y - quarter) +
          heightAt(x + quarter, y - quarter) +
          heightAt(x - quarter, y + quarter) +
          heightAt(x + quarter, y + quarter)) /
        4;
      data[i] = mean + noise[i]!;
    }
  }
  const grid: Grid = { width, height, data, x0, y0, stepX: cell, stepY: cell };
  return groundOf(grid, spec.noiseM);
}

/** Wraps a grid whose CRS is the local plane itself. */
export function groundOf(grid: Grid, verticalRmseM: number | null): Ground {
  const info: SurfaceInfo = {
    source: 'made for a test',
    kind: 'bare earth',
    crs: 'local',
    cellM: Math.max(grid.stepX, grid.stepY),
    verticalUnit: 'm',
    verticalUnitAssumed: false,
    verticalDatum: null,
    verticalRmseM,
    collectedOn: null,
  };
  const fit = Float64Array.of(
    -grid.x0 / grid.stepX,
    1 / grid.stepX,
    0,
    0,
    grid.y0 / grid.stepY,
    0,
    -1 / grid.stepY,
    0,
    0,
    0,
    0,
    0,
  );
  return { plane: localPlane({ lon: -128, lat: 44 }), layers: [{ info, grid, fit }] };
}

/** Only cells within reach of a section are worth computing. */
function nearLine(
  px: Float64Array,
  py: Float64Array,
  x0: number,
  y0: number,
  cell: number,
  width: number,
  height: number,
): Uint8Array {
  const near = new Uint8Array(width * height);
  const reach = Math.ceil(REACH_M / cell);
  for (let i = 0; i < px.length; i += 16) {
    const c = Math.round((px[i]! - x0) / cell);
    const r = Math.round((y0 - py[i]!) / cell);
    for (let row = Math.max(0, r - reach); row <= Math.min(height - 1, r + reach); row++) {
      const from = Math.max(0, c - reach);
      near.fill(1, row * width + from, row * width + Math.max(from, Math.min(width, c + reach + 1)));
    }
  }
  return near;
}

/** Gaussian noise whose correlation falls as exp(−(|dx| + |dy|) / length): one first-order filter along each axis. */
function correlatedNoise(width: number, height: number, sigma: number, length: number, random: Random): Float64Array {
  const a = Math.exp(-1 / length);
  const b = Math.sqrt(1 - a * a);
  const field = new Float64Array(width * height);
  for (let i = 0; i < field.length; i++) field[i] = random.normal();
  for (let r = 0; r < height; r++) {
    for (let c = 1; c < width; c++) field[r * width + c] = a * field[r * width + c - 1]! + b * field[r * width + c]!;
  }
  for (let r = 1; r < height; r++) {
    for (let c = 0; c < width; c++) field[r * width + c] = a * field[(r - 1) * width + c]! + b * field[r * width + c]!;
  }
  for (let i = 0; i < field.length; i++) field[i]! *= sigma;
  return field;
}
