import type { Grid } from '../../src/terrain/index.ts';
import { seededRandom } from '../../src/units/index.ts';
import { type FineGround, groundAt } from '../ground/tiles.ts';
import { coarseNoiseM, type Feature, features, noise, seed } from '../recipe.ts';
import type { RoadDesign } from '../road/road-design.ts';
import { correlatedField } from './correlated.ts';

/**
 * Turns true 1 m heights into what a survey from the air would give, in place: few ground returns under trees, the trench
 * that a bare-earth filter leaves over a culvert, correlated error everywhere, and no data past the end of the flight.
 */
export function spoil(heights: Grid, ground: FineGround, roads: readonly RoadDesign[]): void {
  for (const feature of features) {
    const road = roads.find(({ key, second }) => key === feature.road && !second);
    if (!road) continue;
    if (feature.what === 'sparse returns') thinReturns(heights, ground, road, feature);
    if (feature.what === 'culvert') digTrench(heights, road, feature);
  }
  const field = correlatedField(
    heights.width,
    heights.height,
    noise.correlationM / heights.stepX,
    seededRandom(seed + 5),
  );
  for (let i = 0; i < field.length; i++) heights.data[i] += noise.sigmaM * field[i];
  cutCorner(heights);
}

/** The flight ended before the north-east corner: a slanted border, this long on each side, metres. */
const CORNER_M = 420;

function cutCorner({ data, width }: Grid): void {
  for (let r = 0; r < CORNER_M; r++) data.fill(Number.NaN, (r + 1) * width - (CORNER_M - r), (r + 1) * width);
}

/** Adds the coarse survey's own error to its heights in place: correlated over three cells. */
export function spoilCoarse({ data, width, height }: Grid): void {
  const field = correlatedField(width, height, 3, seededRandom(seed + 7));
  for (let i = 0; i < data.length; i++) data[i] += coarseNoiseM * field[i];
}

/** Spacing of the ground returns under trees, metres: about one in 5 m². */
const RETURN_M = 2.2;

/** Replaces the slope beside a road by flat triangles between scattered points of it, from 1.5 m inside the edge to 40 m out. */
function thinReturns(heights: Grid, ground: FineGround, road: RoadDesign, { from, to, side }: Feature): void {
  const random = seededRandom(seed + 6);
  const corners = new Map<string, readonly [number, number, number]>();
  const corner = (c: number, r: number) => {
    const key = `${c},${r}`;
    let point = corners.get(key);
    if (!point) {
      const x = heights.x0 + (c + 0.6 * (random.next() - 0.5)) * RETURN_M;
      const y = heights.y0 - (r + 0.6 * (random.next() - 0.5)) * RETURN_M;
      point = [x, y, groundAt(ground, x, y)];
      corners.set(key, point);
    }
    return point;
  };
  for (const i of cellsBeside(heights, road, from, to, side === 'left' ? 0 : 1)) {
    const x = heights.x0 + (i % heights.width) * heights.stepX;
    const y = heights.y0 - Math.floor(i / heights.width) * heights.stepY;
    const c = Math.floor((x - heights.x0) / RETURN_M);
    const r = Math.floor((heights.y0 - y) / RETURN_M);
    for (let dr = -1; dr <= 1; dr++) {
      for (let dc = -1; dc <= 1; dc++) {
        const [a, b, e, f] = [
          corner(c + dc, r + dr),
          corner(c + dc + 1, r + dr),
          corner(c + dc, r + dr + 1),
          corner(c + dc + 1, r + dr + 1),
        ];
        const z = onTriangle(a, b, e, x, y) ?? onTriangle(b, f, e, x, y);
        if (z !== null) heights.data[i] = z;
      }
    }
  }
}

/** Cells beside a stretch of road, as indices in row order. */
function cellsBeside(grid: Grid, road: RoadDesign, from: number, to: number, side: 0 | 1): number[] {
  const cells = new Set<number>();
  const { half } = road.sides[side];
  const sign = side === 0 ? 1 : -1;
  for (let s = from; s < to; s++) {
    for (let away = half[s] - 1.5; away < half[s] + 40; away += 0.5) {
      const x = road.line.x[s] - road.ty[s] * away * sign;
      const y = road.line.y[s] + road.tx[s] * away * sign;
      cells.add(Math.round(grid.y0 - y) * grid.width + Math.round(x - grid.x0));
    }
  }
  return [...cells].sort((a, b) => a - b);
}

type Corner = readonly [x: number, y: number, z: number];

/** Height of a triangle at a point, or null outside it. */
function onTriangle(a: Corner, b: Corner, c: Corner, x: number, y: number): number | null {
  const area = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
  const u = ((b[0] - x) * (c[1] - y) - (b[1] - y) * (c[0] - x)) / area;
  const v = ((c[0] - x) * (a[1] - y) - (c[1] - y) * (a[0] - x)) / area;
  const w = 1 - u - v;
  return u < 0 || v < 0 || w < 0 ? null : u * a[2] + v * b[2] + w * c[2];
}

/** Cuts the fill away over a culvert: a notch 3 m wide at its bottom, 2.5 m under the road, with sides of one to one. */
function digTrench(heights: Grid, road: RoadDesign, { from, to }: Feature): void {
  const middle = Math.round((from + to) / 2);
  const { line, tx, ty } = road;
  const bottom = line.z[middle] - 2.5;
  const reach = 14;
  for (let away = -reach; away <= reach; away += 0.5) {
    for (let along = -6; along <= 6; along += 0.5) {
      const x = line.x[middle] - ty[middle] * away + tx[middle] * along;
      const y = line.y[middle] + tx[middle] * away + ty[middle] * along;
      const i = Math.round(heights.y0 - y) * heights.width + Math.round(x - heights.x0);
      const wall = bottom - 0.1 * away + Math.max(0, Math.abs(along) - 1.5);
      heights.data[i] = Math.min(heights.data[i], wall);
    }
  }
}
