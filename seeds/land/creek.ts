import type { Grid } from '../../src/terrain/index.ts';
import { area, creek, creekCourse } from '../recipe.ts';
import { type Line, resample, splineThrough } from '../road/line.ts';

/** The creek's middle line with its bed level, a point every 4 m from west to east. */
export function creekLine(): Line {
  const course = creekCourse.map(([x, y]) => [area.west + x, area.south + y] as const);
  const line = resample(splineThrough(course, 2), 4);
  for (let i = 0; i < line.s.length; i++) line.z[i] = creek.sourceM - creek.fallPerM * line.s[i];
  return line;
}

/** A place by the creek: its distance from the middle line (positive on the left bank), and station and bed level there. */
export interface ByCreek {
  readonly offsetM: number;
  readonly stationM: number;
  readonly bedM: number;
}

/** Calls `visit` with the index and the nearest place by the creek of every cell of `grid` within `reach` metres of it. */
export function forCellsByCreek(line: Line, grid: Grid, reach: number, visit: (i: number, at: ByCreek) => void): void {
  const { width, height, x0, y0, stepX: cell } = grid;
  const nearest = new Float32Array(width * height).fill(reach * reach);
  const point = new Int32Array(width * height).fill(-1);
  for (let k = 0; k < line.x.length; k++) {
    const top = Math.max(0, Math.ceil((y0 - line.y[k] - reach) / cell));
    const bottom = Math.min(height - 1, Math.floor((y0 - line.y[k] + reach) / cell));
    const left = Math.max(0, Math.ceil((line.x[k] - reach - x0) / cell));
    const right = Math.min(width - 1, Math.floor((line.x[k] + reach - x0) / cell));
    for (let r = top; r <= bottom; r++) {
      const dy = y0 - r * cell - line.y[k];
      for (let c = left; c <= right; c++) {
        const dx = x0 + c * cell - line.x[k];
        const d = dx * dx + dy * dy;
        const i = r * width + c;
        if (d >= nearest[i]) continue;
        nearest[i] = d;
        point[i] = k;
      }
    }
  }
  for (let i = 0; i < point.length; i++) {
    if (point[i] >= 0) visit(i, placeBy(line, point[i], x0 + (i % width) * cell, y0 - Math.floor(i / width) * cell));
  }
}

function placeBy(line: Line, at: number, x: number, y: number): ByCreek {
  const i = Math.min(line.x.length - 2, Math.max(1, at));
  const tx = line.x[i + 1] - line.x[i - 1];
  const ty = line.y[i + 1] - line.y[i - 1];
  const length = Math.hypot(tx, ty);
  const along = ((x - line.x[at]) * tx + (y - line.y[at]) * ty) / length;
  const across = (tx * (y - line.y[at]) - ty * (x - line.x[at])) / length;
  return { offsetM: across, stationM: line.s[at] + along, bedM: line.z[at] - creek.fallPerM * along };
}

/** Finds the place by the creek of single points, or null further than 8 m from it. */
export function creekPlace(line: Line): (x: number, y: number) => ByCreek | null {
  const bucketM = 16;
  const buckets = new Map<number, number[]>();
  const key = (x: number, y: number) => Math.floor(x / bucketM) * 1e7 + Math.floor(y / bucketM);
  for (let i = 0; i < line.x.length; i++) {
    for (let dx = -bucketM; dx <= bucketM; dx += bucketM) {
      for (let dy = -bucketM; dy <= bucketM; dy += bucketM) {
        const k = key(line.x[i] + dx, line.y[i] + dy);
        const list = buckets.get(k);
        if (list) list.push(i);
        else buckets.set(k, [i]);
      }
    }
  }
  return (x, y) => {
    let best = 8 * 8;
    let at = -1;
    for (const i of buckets.get(key(x, y)) ?? []) {
      const d = (line.x[i] - x) ** 2 + (line.y[i] - y) ** 2;
      if (d >= best) continue;
      best = d;
      at = i;
    }
    return at < 0 ? null : placeBy(line, at, x, y);
  };
}

/** Ground beside the creek, metres: a floor of the recipe's width, the walls cut back behind it, and the bed. */
export function creekFloorAt(at: ByCreek, groundM: number): number {
  const width = floorWidth(at.stationM, at.offsetM > 0);
  const away = Math.abs(at.offsetM);
  const floor = at.bedM + creek.bankM + 0.03 * away;
  const wall = at.bedM + creek.bankM + 0.03 * Math.min(away, width) + Math.max(0, away - width) * creek.wall;
  return Math.min(Math.max(groundM, floor), wall);
}

/** Half width of the valley floor on one bank, metres, eased between the recipe's stations. */
function floorWidth(stationM: number, left: boolean): number {
  const table = creek.floor;
  let i = 0;
  while (i + 2 < table.length && table[i + 1][0] < stationM) i++;
  const t = Math.min(1, Math.max(0, (stationM - table[i][0]) / (table[i + 1][0] - table[i][0])));
  const ease = t * t * (3 - 2 * t);
  const side = left ? 1 : 2;
  return table[i][side] + ease * (table[i + 1][side] - table[i][side]);
}
