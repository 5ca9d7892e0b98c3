import type { Grid } from '../../src/terrain/index.ts';
import type { FineGround } from '../ground/tiles.ts';
import { groundAt } from '../ground/tiles.ts';

/** Why a fall line ends. */
export type EndReason = 'ground levels' | 'water' | 'limit' | 'no data';

/** A fall line: points every STEP_M of its length (CRS metres) from the edge to its end. */
export interface FallLine {
  readonly x: number[];
  readonly y: number[];
  readonly why: EndReason;
}

export const STEP_M = 0.5;
const LIMIT_M = 300;
const LEVEL_M = 15;
const WINDOW_M = 5;
/** Under this slope (tangent) the line carries straight on. */
const CARRY = 0.12;

/**
 * Steepest descent over ground smoothed over 3 m, straight on over flats and pits, until the first 15 m that fall by under
 * 10 degrees in the mean with no 5 m over 15, or water, or 300 m. `heading` is the way out from the road, radians from east.
 */
export function fallLine(
  ground: FineGround,
  smooth: Grid,
  start: { x: number; y: number },
  heading: number,
  inWater: (x: number, y: number) => boolean,
): FallLine {
  const x = [start.x];
  const y = [start.y];
  const z = [groundAt(ground, start.x, start.y)];
  let way = heading;
  let end = -1;
  let why: EndReason = 'limit';
  const most = LIMIT_M / STEP_M;
  while (x.length <= most + LEVEL_M / STEP_M) {
    const i = x.length - 1;
    way = turned(smooth, x[i], y[i], way);
    x.push(x[i] + STEP_M * Math.cos(way));
    y.push(y[i] + STEP_M * Math.sin(way));
    z.push(groundAt(ground, x[i + 1], y[i + 1]));
    if (Number.isNaN(z[i + 1])) {
      end = i;
      why = 'no data';
      break;
    }
    if (inWater(x[i + 1], y[i + 1])) {
      end = i + 1;
      why = 'water';
      break;
    }
    const from = i + 1 - LEVEL_M / STEP_M;
    if (from >= 0 && isLevel(z, from)) {
      end = from;
      why = 'ground levels';
      break;
    }
  }
  if (end < 0) end = most;
  return { x: x.slice(0, end + 1), y: y.slice(0, end + 1), why };
}

/** The heading a step on: down the slope at half a step (midpoint rule), or the old one where the ground hardly falls. */
function turned(smooth: Grid, x: number, y: number, way: number): number {
  const first = downhill(smooth, x, y, way);
  const half = STEP_M / 2;
  return downhill(smooth, x + half * Math.cos(first), y + half * Math.sin(first), first);
}

function downhill(grid: Grid, x: number, y: number, way: number): number {
  const gx = (bilinear(grid, x + 1, y) - bilinear(grid, x - 1, y)) / 2;
  const gy = (bilinear(grid, x, y + 1) - bilinear(grid, x, y - 1)) / 2;
  const along = gx * Math.cos(way) + gy * Math.sin(way);
  if (Math.hypot(gx, gy) < CARRY || along > -0.05) return way;
  return Math.atan2(-gy, -gx);
}

function bilinear(grid: Grid, x: number, y: number): number {
  const col = Math.min(grid.width - 1.001, Math.max(0, (x - grid.x0) / grid.stepX));
  const row = Math.min(grid.height - 1.001, Math.max(0, (grid.y0 - y) / grid.stepY));
  const c = Math.floor(col);
  const r = Math.floor(row);
  const u = col - c;
  const v = row - r;
  const i = r * grid.width + c;
  const { data, width } = grid;
  return (1 - v) * ((1 - u) * data[i] + u * data[i + 1]) + v * ((1 - u) * data[i + width] + u * data[i + width + 1]);
}

/** True where the 15 m from index `from` fall by under 10° in the mean, and no 5 m of them by over 15°. */
function isLevel(z: readonly number[], from: number): boolean {
  const steps = LEVEL_M / STEP_M;
  const window = WINDOW_M / STEP_M;
  if ((z[from] - z[from + steps]) / LEVEL_M >= Math.tan((10 * Math.PI) / 180)) return false;
  const steep = Math.tan((15 * Math.PI) / 180) * WINDOW_M;
  for (let k = from; k + window <= from + steps; k++) if (z[k] - z[k + window] > steep) return false;
  return true;
}

/** Index of the point to which the straight line from the edge follows a fall line to within 5 m. */
export function straightTo({ x, y }: FallLine): number {
  for (let end = 2; end < x.length; end += 2) {
    const dx = x[end] - x[0];
    const dy = y[end] - y[0];
    const length = Math.hypot(dx, dy) || 1;
    for (let k = 1; k < end; k += 2) {
      if (Math.abs(dx * (y[k] - y[0]) - dy * (x[k] - x[0])) / length > 5) return end;
    }
  }
  return x.length - 1;
}
