import { roughness } from '../recipe.ts';
import { type ByRoad, benchHeight, besideRoad, placeByRoad } from './beside.ts';
import type { RoadDesign } from './road-design.ts';

/** Roads shape the ground this far from their middle line, metres, fading out over the last of it. */
const REACH_M = 110;
const FADE_M = 96;
/** Side of the blocks that share a list of stations, metres. */
const BLOCK_M = 8;
const FINE_M = 0.5;
/** Fill squeezed between a road and the creek, tangent. */
const STEEPEST_FILL = 0.9;
/** Stations of the same road this far along are another leg of it. */
const LEG_M = 90;

/** Where a tile of cells lies: the centre of its first cell (CRS metres), and its cells per row and column. */
export interface TilePlace {
  readonly x: number;
  readonly y: number;
  readonly stride: number;
}

/** A tile's heights, the unit waves, and what the waves add to its natural ground; all at the same cells, metres. */
export interface TileCells {
  readonly heights: Float32Array;
  readonly waves: Float32Array;
  readonly uneven: Float32Array;
  /** Nothing but a bench stands higher than this: the banks of the creek. */
  readonly banks: Float32Array;
  /** 1 on the creek's left, −1 on its right, 0 far from it. */
  readonly creekSide: Int8Array;
}

/** A station of a road. */
export interface Station {
  readonly road: RoadDesign;
  readonly i: number;
}

/** Finds stations within `reach` of a point: every second one. */
export type StationFinder = (x: number, y: number, reach: number) => Station[];

export function stationsNear(roads: readonly RoadDesign[]): StationFinder {
  return (x, y, reach) => {
    const out: Station[] = [];
    for (const road of roads) {
      for (let i = 0; i < road.line.x.length; i += 2)
        if (squared({ road, i }, x, y) < reach * reach) out.push({ road, i });
    }
    return out;
  };
}

const squared = ({ road, i }: Station, x: number, y: number): number =>
  (road.line.x[i] - x) ** 2 + (road.line.y[i] - y) ** 2;

/**
 * Lays roads on a tile of natural ground in place. Beside the nearest road stand its fill, its cut, and the floor that the
 * recipe carves; beside other roads and other legs their fills and cuts. The ground is the natural one, below the carve,
 * then above every fill, then below every cut, and the bench itself last:
 *
 *        cut \            natural
 *             \__bench__ /
 *                       \  fill
 *
 * So the cut of a lower leg keeps the fill of the upper one off its bench.
 */
export function layRoads(cells: TileCells, place: TilePlace, near: StationFinder): void {
  const size = place.stride * FINE_M;
  const stations = near(place.x + size / 2, place.y - size / 2, size * 0.71 + REACH_M);
  if (!stations.length) return;
  const step = BLOCK_M / FINE_M;
  for (let r0 = 0; r0 < place.stride; r0 += step) {
    for (let c0 = 0; c0 < place.stride; c0 += step) {
      const x = place.x + (c0 + step / 2) * FINE_M;
      const y = place.y - (r0 + step / 2) * FINE_M;
      const block = blockOf(stations, x, y);
      if (block) layBlock(cells, place, block, r0, c0);
    }
  }
}

/** The stations that count in a block of cells: those of the nearest leg, and those of every other leg, road by road. */
interface Block {
  readonly own: readonly Station[];
  readonly others: readonly (readonly Station[])[];
}

function blockOf(stations: readonly Station[], x: number, y: number): Block | null {
  const within = stations.filter((station) => squared(station, x, y) < (REACH_M + BLOCK_M) ** 2);
  if (!within.length) return null;
  const nearest = within.reduce((a, b) => (squared(b, x, y) < squared(a, x, y) ? b : a));
  const isOwn = ({ road, i }: Station) => road === nearest.road && Math.abs(i - nearest.i) <= LEG_M;
  const rest = within.filter((station) => !isOwn(station));
  const legs: Station[][] = [];
  for (const station of rest) {
    const leg = legs.at(-1);
    const last = leg?.at(-1);
    if (leg && last && last.road === station.road && station.i - last.i <= 4) leg.push(station);
    else legs.push([station]);
  }
  return { own: within.filter(isOwn), others: legs };
}

function layBlock(cells: TileCells, place: TilePlace, block: Block, r0: number, c0: number): void {
  const step = BLOCK_M / FINE_M;
  const rEnd = Math.min(place.stride, r0 + step);
  const cEnd = Math.min(place.stride, c0 + step);
  for (let r = r0; r < rEnd; r++) {
    for (let c = c0; c < cEnd; c++) {
      const i = r * place.stride + c;
      const x = place.x + c * FINE_M;
      const y = place.y - r * FINE_M;
      cells.heights[i] = groundAtRoads(cells, i, x, y, block);
    }
  }
}

function groundAtRoads(cells: TileCells, cell: number, x: number, y: number, block: Block): number {
  const natural = cells.heights[cell];
  const wave = cells.waves[cell];
  let bench = 0;
  let benchWeight = 0;
  const onBench = (road: RoadDesign, by: ByRoad) => {
    if (by.outsideM >= 0) return;
    bench -= by.outsideM * benchHeight(road, by, wave);
    benchWeight -= by.outsideM;
  };
  const { road, i } = closest(block.own, x, y);
  const by = placeByRoad(road, i, x, y);
  const gap = road.gap[i] === 1;
  let { fill, carve, cut, rough, edge } = besideRoad(road, by);
  // A fill ends at the creek: what lies across it stays as it was.
  if (cells.creekSide[cell] * road.creekSide[i] < 0) fill = Number.NEGATIVE_INFINITY;
  if (gap) {
    fill = Number.NEGATIVE_INFINITY;
    carve = cut = Number.POSITIVE_INFINITY;
  } else onBench(road, by);
  let nearest = by.awayM;
  for (const leg of block.others) {
    const other = closest(leg, x, y);
    if (other.road.gap[other.i]) continue;
    const there = placeByRoad(other.road, other.i, x, y);
    if (there.awayM > REACH_M) continue;
    nearest = Math.min(nearest, there.awayM);
    onBench(other.road, there);
    const theirs = besideRoad(other.road, there);
    fill = Math.max(fill, theirs.fill);
    cut = Math.min(cut, theirs.cut);
  }
  if (benchWeight > 0) return bench / benchWeight;
  const { share, reachM } = roughness.graded;
  const kept = Math.min(1, share + ((1 - share) * by.outsideM) / reachM);
  let z = natural - (1 - kept) * cells.uneven[cell];
  z = Math.min(z, carve + rough * wave);
  z = Math.max(z, fill + rough * wave);
  z = Math.min(z, cut + roughness.cutM * wave * Math.min(1, Math.max(0, cut - fill)));
  // A fill gives way to the creek's banks, but not so far that the road's own edge would fall in.
  z = Math.min(z, Math.max(cells.banks[cell], natural, edge - STEEPEST_FILL * Math.max(0, by.outsideM)));
  if (nearest <= FADE_M) return z;
  const t = Math.min(1, (nearest - FADE_M) / (REACH_M - FADE_M));
  return z + t * t * (3 - 2 * t) * (natural - z);
}

/** The nearest of stations in order along a road: every fourth first, then those about the best of these. */
function closest(stations: readonly Station[], x: number, y: number): Station {
  let at = 0;
  let least = Number.POSITIVE_INFINITY;
  const look = (from: number, to: number, step: number) => {
    for (let k = from; k < to; k += step) {
      const d = squared(stations[k], x, y);
      if (d >= least) continue;
      least = d;
      at = k;
    }
  };
  look(0, stations.length, 4);
  look(Math.max(0, at - 3), Math.min(stations.length, at + 4), 1);
  return stations[at];
}
