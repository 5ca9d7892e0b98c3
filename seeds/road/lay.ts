import { roughness } from '../recipe.ts';
import { edgeZ, type RoadDesign } from './design.ts';
import { FALL_COUNT, FALL_STEP_M } from './shapes.ts';

/** Roads shape the ground this far from their middle line, metres, fading out over the last of it. */
const REACH_M = 72;
const FADE_M = 60;
/** Side of the blocks that share a list of stations, metres. */
const BLOCK_M = 8;
const FINE_M = 0.5;

/** Where a tile of cells lies: the centre of its first cell (CRS metres), and its cells per row and column. */
export interface TilePlace {
  readonly x: number;
  readonly y: number;
  readonly stride: number;
}

/** Finds stations within `reach` of a point, as road index · 2²⁰ + station; every second station is enough. */
export type StationFinder = (x: number, y: number, reach: number) => number[];

export const ROAD = 1 << 20;

export function stationsNear(roads: readonly RoadDesign[]): StationFinder {
  return (x, y, reach) => {
    const out: number[] = [];
    for (let k = 0; k < roads.length; k++) {
      const { line } = roads[k];
      for (let i = 0; i < line.x.length; i += 2) {
        const d = (line.x[i] - x) ** 2 + (line.y[i] - y) ** 2;
        if (d < reach * reach) out.push(k * ROAD + i);
      }
    }
    return out;
  };
}

/**
 * Lays roads on a tile of natural ground in place. Around every station stand three cones: the fill falls away from the
 * bench's edge, the cut rises from it, and where the recipe carves, the land is taken off down to the fill. The ground is
 * the natural one, below every carve, then above every fill, then below every cut, and the bench itself last:
 *
 *        cut \            natural
 *             \__bench__ /
 *                       \  fill
 *
 * The largest of all cones has no seam where the nearest station changes, as at the middle of a hairpin, and the cut of a
 * lower leg keeps the fill of the upper one off its bench. `waves` is unevenness of rms 1 at the same cells.
 */
export function layRoads(
  heights: Float32Array,
  waves: Float32Array,
  place: TilePlace,
  roads: readonly RoadDesign[],
  near: StationFinder,
): void {
  const size = place.stride * FINE_M;
  const stations = near(place.x + size / 2, place.y - size / 2, size * 0.71 + REACH_M);
  if (!stations.length) return;
  const step = BLOCK_M / FINE_M;
  for (let r0 = 0; r0 < place.stride; r0 += step) {
    for (let c0 = 0; c0 < place.stride; c0 += step) {
      const x = place.x + (c0 + step / 2) * FINE_M;
      const y = place.y - (r0 + step / 2) * FINE_M;
      const block = stations.filter((id) => {
        const { line } = roads[Math.floor(id / ROAD)];
        const i = id % ROAD;
        return (line.x[i] - x) ** 2 + (line.y[i] - y) ** 2 < (REACH_M + BLOCK_M * 0.8) ** 2;
      });
      if (block.length) layBlock(heights, waves, place, roads, block, r0, c0, step);
    }
  }
}

function layBlock(
  heights: Float32Array,
  waves: Float32Array,
  place: TilePlace,
  roads: readonly RoadDesign[],
  block: readonly number[],
  r0: number,
  c0: number,
  step: number,
): void {
  const rEnd = Math.min(place.stride, r0 + step);
  const cEnd = Math.min(place.stride, c0 + step);
  for (let r = r0; r < rEnd; r++) {
    for (let c = c0; c < cEnd; c++) {
      const i = r * place.stride + c;
      heights[i] = groundUnderRoads(heights[i], waves[i], place.x + c * FINE_M, place.y - r * FINE_M, roads, block);
    }
  }
}

function groundUnderRoads(
  natural: number,
  wave: number,
  x: number,
  y: number,
  roads: readonly RoadDesign[],
  block: readonly number[],
): number {
  const first = nearestSide(x, y, roads, block);
  const nearest = first.away;
  let fill = Number.NEGATIVE_INFINITY;
  let fillRough = 0;
  let cut = Number.POSITIVE_INFINITY;
  let carve = Number.POSITIVE_INFINITY;
  let carveRough = 0;
  let bench = 0;
  let benchWeight = 0;
  let lastRoad = -1;
  let closest = Number.POSITIVE_INFINITY;
  let closestAt = -1;
  for (let n = 0; n <= block.length; n++) {
    const k = n < block.length ? Math.floor(block[n] / ROAD) : -1;
    if (k !== lastRoad && closestAt >= 0) {
      const on = onBench(roads[lastRoad], closestAt, x, y, wave);
      bench += benchWeightOf * on;
      benchWeight += benchWeightOf;
      closest = Number.POSITIVE_INFINITY;
      closestAt = -1;
    }
    lastRoad = k;
    if (n === block.length) break;
    const road = roads[k];
    const i = block[n] % ROAD;
    const dx = x - road.line.x[i];
    const dy = y - road.line.y[i];
    const away = Math.sqrt(dx * dx + dy * dy);
    if (away < closest) {
      closest = away;
      closestAt = i;
    }
    if (away > REACH_M || road.gap[i]) continue;
    const side = road.tx[i] * dy - road.ty[i] * dx > 0 ? 0 : 1;
    // Round a bend a far station sees the ground on its other side; its fill and carve do not count there.
    const own = k === first.road;
    if (own && side !== first.side) continue;
    const design = road.sides[side];
    const d = Math.max(0, away - design.half[i]);
    const edge = edgeZ(road, side, i);
    const at = d / FALL_STEP_M;
    const j = Math.min(FALL_COUNT - 2, Math.floor(at));
    const from = i * FALL_COUNT + j;
    const fallen = design.fill[from] + (at - j) * (design.fill[from + 1] - design.fill[from]);
    if (edge - fallen > fill) {
      fill = edge - fallen;
      fillRough = design.rough[i] * Math.min(1, d);
    }
    const carved = design.carve[from] + (at - j) * (design.carve[from + 1] - design.carve[from]);
    if (own && edge - carved + design.carveLift[i] < carve) {
      carve = edge - carved + design.carveLift[i];
      carveRough = design.rough[i] * Math.min(1, d);
    }
    const rise = edge + cutRise(d, design.cut[i], design.ditch[i], design.apron[i]);
    if (rise < cut) cut = rise;
  }
  if (benchWeight > 0) return bench / benchWeight;
  let z = natural;
  z = Math.min(z, carve + carveRough * wave);
  z = Math.max(z, fill + fillRough * wave);
  z = Math.min(z, cut + roughness.cutM * wave * Math.min(1, Math.max(0, cut - fill)));
  if (nearest <= FADE_M) return z;
  const t = Math.min(1, (nearest - FADE_M) / (REACH_M - FADE_M));
  return z + t * t * (3 - 2 * t) * (natural - z);
}

/** The nearest station's road and side, and its distance, metres. */
function nearestSide(x: number, y: number, roads: readonly RoadDesign[], block: readonly number[]) {
  let best = Number.POSITIVE_INFINITY;
  let id = 0;
  for (const candidate of block) {
    const { line } = roads[Math.floor(candidate / ROAD)];
    const i = candidate % ROAD;
    const d = (line.x[i] - x) ** 2 + (line.y[i] - y) ** 2;
    if (d >= best) continue;
    best = d;
    id = candidate;
  }
  const road = Math.floor(id / ROAD);
  const { line, tx, ty } = roads[road];
  const i = id % ROAD;
  const side = tx[i] * (y - line.y[i]) - ty[i] * (x - line.x[i]) > 0 ? 0 : 1;
  return { road, side, away: Math.sqrt(best) };
}

/** Height of the cut over the edge at a distance from it, metres: a ditch, an apron of level ground, then the cut slope. */
function cutRise(d: number, slope: number, ditch: number, apron: number): number {
  if (apron > 0) return d < apron ? 0.02 * d : 0.02 * apron + (d - apron) * slope;
  if (ditch < 0.02) return d * slope;
  if (d < 1.8) return -ditch * Math.min(1, d / 0.8, (1.8 - d) / 0.8);
  return (d - 1.8) * slope;
}

let benchWeightOf = 0;

/** Height of the bench at a point, metres; its weight (metres inside the edge, 0 outside) is left in `benchWeightOf`. */
function onBench(road: RoadDesign, near: number, x: number, y: number, wave: number): number {
  benchWeightOf = 0;
  const { line } = road;
  const last = line.x.length - 1;
  const dx = x - line.x[near];
  const dy = y - line.y[near];
  const along = Math.max(-2, Math.min(2, dx * road.tx[near] + dy * road.ty[near]));
  const s = Math.min(last, Math.max(0, near + along));
  const i = Math.min(last - 1, Math.floor(s));
  const t = s - i;
  const px = line.x[i] + t * (line.x[i + 1] - line.x[i]);
  const py = line.y[i] + t * (line.y[i + 1] - line.y[i]);
  if (road.gap[i]) return 0;
  const away = Math.hypot(x - px, y - py);
  const side = road.tx[i] * (y - py) - road.ty[i] * (x - px) > 0 ? 0 : 1;
  const { half, berm } = road.sides[side];
  const inside = half[i] + t * (half[i + 1] - half[i]) - away;
  if (inside <= 0) return 0;
  benchWeightOf = inside;
  const crossfall = road.crossfall[i] + t * (road.crossfall[i + 1] - road.crossfall[i]);
  const middle = line.z[i] + t * (line.z[i + 1] - line.z[i]);
  const height = middle + (side === 0 ? away : -away) * crossfall;
  const bump = inside < 1.3 ? (berm[i] * (1 - Math.cos((2 * Math.PI * inside) / 1.3))) / 2 : 0;
  return height + bump + roughness.benchM * wave;
}
