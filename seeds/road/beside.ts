import { roughness } from '../recipe.ts';
import { edgeZ, type RoadDesign } from './road-design.ts';
import { FALL_COUNT, FALL_STEP_M } from './shapes.ts';

/** A point's place by a road: station (metres along, with its fraction), side, and distances from the middle and the edge. */
export interface ByRoad {
  readonly s: number;
  readonly side: 0 | 1;
  readonly awayM: number;
  /** Outside the bench's edge; negative on the bench. */
  readonly outsideM: number;
  /** Share of the other side's slopes: over 0 only past a road's ends, where the two sides go round into one another. */
  readonly turned: number;
}

/**
 * Projects a point on a road's middle line near a station: Newton's steps to where the line to the point is square to the
 * road, so that the station moves evenly round a bend. Past the ends the nearest end counts.
 */
export function placeByRoad(road: RoadDesign, near: number, x: number, y: number): ByRoad {
  const { line, tx, ty } = road;
  const last = line.x.length - 1;
  let s = near;
  let dx = 0;
  let dy = 0;
  let ux = 0;
  let uy = 0;
  for (let round = 0; ; round++) {
    const i = Math.min(last - 1, Math.floor(s));
    const t = s - i;
    dx = x - line.x[i] - t * (line.x[i + 1] - line.x[i]);
    dy = y - line.y[i] - t * (line.y[i + 1] - line.y[i]);
    ux = tx[i] + t * (tx[i + 1] - tx[i]);
    uy = ty[i] + t * (ty[i + 1] - ty[i]);
    if (round === 4) break;
    const bend = dx * (tx[i + 1] - tx[i]) + dy * (ty[i + 1] - ty[i]);
    const step = (dx * ux + dy * uy) / Math.max(0.4, 1 - bend);
    s = Math.min(last, Math.max(0, Math.min(near + 4, Math.max(near - 4, s + step))));
  }
  const side = ux * dy - uy * dx > 0 ? 0 : 1;
  const awayM = Math.hypot(dx, dy);
  const past = s === 0 || s === last ? Math.abs(dx * ux + dy * uy) / (awayM + 1e-9) : 0;
  const turned = past > 0.02 ? 0.5 * (1 - Math.sqrt(Math.max(0, 1 - past * past))) : 0;
  return { s, side, awayM, outsideM: awayM - between(road.sides[side].half, s), turned };
}

/** Value at a station and its fraction. */
export function between(values: ArrayLike<number>, s: number): number {
  const i = Math.min(values.length - 2, Math.floor(s));
  return values[i] + (s - i) * (values[i + 1] - values[i]);
}

/** Heights at a place beside a road, metres: of the fill, of the land carved down, of the cut; Infinity where there is none. */
export interface Beside {
  readonly fill: number;
  readonly carve: number;
  readonly cut: number;
  /** Height of the bench's edge there. */
  readonly edge: number;
  /** Rms of the unevenness of fill and carve there, metres. */
  readonly rough: number;
}

/** Slopes are graded near the road: their unevenness is whole only this far from the edge, metres. */
const ROUGH_FROM_M = 6;

/** What the design lays beside a road at a place. */
export function besideRoad(road: RoadDesign, by: ByRoad): Beside {
  const here = onSide(road, by, by.side);
  if (by.turned === 0) return here;
  const there = onSide(road, by, by.side === 0 ? 1 : 0);
  const mix = (a: number, b: number) => (1 - by.turned) * a + by.turned * b;
  return {
    fill: mix(here.fill, there.fill),
    carve: mix(here.carve, there.carve),
    cut: mix(here.cut, there.cut),
    edge: mix(here.edge, there.edge),
    rough: mix(here.rough, there.rough),
  };
}

function onSide(road: RoadDesign, { s, outsideM }: ByRoad, side: 0 | 1): Beside {
  const design = road.sides[side];
  const i = Math.min(design.half.length - 2, Math.floor(s));
  const t = s - i;
  const d = Math.max(0, outsideM);
  const edge = (1 - t) * edgeZ(road, side, i) + t * edgeZ(road, side, i + 1);
  const fallen = (1 - t) * fallOf(design.fill, i, d) + t * fallOf(design.fill, i + 1, d);
  const carved = (1 - t) * fallOf(design.carve, i, d) + t * fallOf(design.carve, i + 1, d);
  const rise =
    (1 - t) * cutRise(d, design.cut[i], design.ditch[i], design.apron[i]) +
    t * cutRise(d, design.cut[i + 1], design.ditch[i + 1], design.apron[i + 1]);
  const lift = (1 - t) * design.carveLift[i] + t * design.carveLift[i + 1];
  return {
    fill: edge - fallen,
    carve: Number.isNaN(lift) ? Number.POSITIVE_INFINITY : edge - carved + lift,
    cut: edge + rise,
    edge,
    rough: design.rough[i] * Math.min(1, d / ROUGH_FROM_M),
  };
}

function fallOf(table: Float32Array, i: number, d: number): number {
  const at = d / FALL_STEP_M;
  const j = Math.min(FALL_COUNT - 2, Math.floor(at));
  const from = i * FALL_COUNT + j;
  return table[from] + (at - j) * (table[from + 1] - table[from]);
}

/** Height of the cut over the edge at a distance from it, metres: a ditch, an apron of level ground, then the cut slope. */
function cutRise(d: number, slope: number, ditch: number, apron: number): number {
  if (apron > 0) return d < apron ? 0.02 * d : 0.02 * apron + (d - apron) * slope;
  if (ditch < 0.02) return d * slope;
  if (d < 1.8) return -ditch * Math.min(1, d / 0.8, (1.8 - d) / 0.8);
  return (d - 1.8) * slope;
}

/** Height of the bench at a place on it, metres: crossfall, the berm inside the edge, a little unevenness. */
export function benchHeight(road: RoadDesign, { s, side, awayM, outsideM }: ByRoad, wave: number): number {
  const crossfall = between(road.crossfall, s);
  const inside = -outsideM;
  const berm = between(road.sides[side].berm, s);
  const bump = inside < 1.3 ? (berm * (1 - Math.cos((2 * Math.PI * inside) / 1.3))) / 2 : 0;
  return between(road.line.z, s) + (side === 0 ? awayM : -awayM) * crossfall + bump + roughness.benchM * wave;
}
