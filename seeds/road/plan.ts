import type { Grid } from '../../src/terrain/index.ts';
import { features, type RoadKey, raiseM, roads } from '../recipe.ts';
import { type Line, lineOf, resample } from './line.ts';
import { pegLine } from './peg.ts';

/** A road's true middle line, a point every metre. */
export interface RoadLine {
  readonly key: RoadKey;
  readonly name: string;
  readonly line: Line;
  /** True of the second carriageway of a divided stretch. */
  readonly second: boolean;
}

/** How far a road that leaves another is bent to meet it, metres. */
const JOIN_M = 120;

/** The middle lines of the recipe's roads on `land`, bends and grades eased. */
export function planRoads(land: Grid): RoadLine[] {
  const done: RoadLine[] = [];
  for (const { key, name, joins, plan } of roads) {
    const line = ease(resample(pegLine(land, plan), 1));
    const other = done.find((road) => road.key === joins);
    done.push({ key, name, line: other ? joined(line, other.line) : line, second: false });
  }
  for (const { what, road, from, to } of features) {
    const first = done.find(({ key }) => key === road);
    if (what === 'divided' && first) done.push({ ...first, line: beside(first.line, from, to), second: true });
  }
  return done;
}

/** The carriageway that leaves a line on its left at `from` and is back at `to`: 9.5 m away and 0.6 m higher between. */
function beside(line: Line, from: number, to: number): Line {
  const x: number[] = [];
  const y: number[] = [];
  const z: number[] = [];
  for (let i = from; i <= to; i++) {
    const t = Math.min(1, (i - from) / 50, (to - i) / 50);
    const share = t * t * (3 - 2 * t);
    const dx = line.x[i + 2] - line.x[i - 2];
    const dy = line.y[i + 2] - line.y[i - 2];
    const length = Math.hypot(dx, dy);
    x.push(line.x[i] - (dy / length) * 9.5 * share);
    y.push(line.y[i] + (dx / length) * 9.5 * share);
    z.push(line.z[i] + 0.6 * share);
  }
  const out = lineOf(x, y);
  out.z.set(z);
  return resample(out, 1);
}

/** Rounds the kinks of pegging off (5 m either way) and lays vertical curves between grades (30 m either way). */
function ease(line: Line): Line {
  const out = lineOf(movingMean(line.x, 5), movingMean(line.y, 5));
  out.z.set(movingMean(line.z, 30).map((z) => z + raiseM));
  return resample(out, 1);
}

/** Mean over ± `half` points, fewer towards the ends, which stay where they are. */
function movingMean(values: Float64Array, half: number): Float64Array {
  const out = new Float64Array(values.length);
  for (let i = 0; i < values.length; i++) {
    const reach = Math.min(half, i, values.length - 1 - i);
    let sum = 0;
    for (let k = -reach; k <= reach; k++) sum += values[i + k];
    out[i] = sum / (2 * reach + 1);
  }
  return out;
}

/** Moves the beginning of a line onto the nearest point of another, fading out over JOIN_M. */
function joined(line: Line, other: Line): Line {
  let at = 0;
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i < other.x.length; i++) {
    const d = Math.hypot(other.x[i] - line.x[0], other.y[i] - line.y[0]);
    if (d < best) {
      best = d;
      at = i;
    }
  }
  const move = [other.x[at] - line.x[0], other.y[at] - line.y[0], other.z[at] - line.z[0]];
  const x = line.x.slice();
  const y = line.y.slice();
  const z = line.z.slice();
  for (let i = 0; i < x.length && i < JOIN_M; i++) {
    const t = 1 - i / JOIN_M;
    const share = t * t * (3 - 2 * t);
    x[i] += share * move[0];
    y[i] += share * move[1];
    z[i] += share * move[2];
  }
  const out = lineOf(x, y);
  out.z.set(z);
  return resample(out, 1);
}
