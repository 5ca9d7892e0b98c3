import type { Grid } from '../../src/terrain/index.ts';
import { toDegrees } from '../../src/units/index.ts';
import { wander } from '../fields/wander.ts';
import { type Feature, roughness } from '../recipe.ts';
import { type RoadDesign, touches } from './road-design.ts';
import { FALL_COUNT, FALL_STEP_M, FLAT_M, fallTable, type SlopeKind, type SlopeShape } from './shapes.ts';
import { heightBeside, type Stretch } from './stretches.ts';

/** Lays fills, carved floors, cuts and ditches beside one side of a road, station by station. */
export function laySlopes(
  road: RoadDesign,
  side: 0 | 1,
  stretches: readonly Stretch[],
  land: Grid,
  mine: readonly Feature[],
  from: number,
): void {
  const design = road.sides[side];
  const count = design.half.length;
  const fillAngle = wander(count, 30, from).map((v, i) =>
    Math.min(60, Math.max(33, hillside(road, land, side, i) + 9) + 2 * v),
  );
  const cutSlope = wander(count, 40, from + 7).map((v, i) =>
    Math.min(2.6, Math.max(0.8, 1 + 0.22 * v, rise(road, land, side, i) + 0.35)),
  );
  const angleNoise = wander(count, 16, from + 13);
  const own = stretches.filter((stretch) => stretch.side === side);
  const on = mine.filter((f) => touches(f, side));
  for (let i = 0; i < count; i++) {
    const stretch = own.find((s) => i >= s.from && i < s.to);
    const shape: SlopeShape = stretch
      ? { ...stretch.shape, angleDeg: stretch.shape.angleDeg + 1.4 * angleNoise[i] }
      : { kind: 'natural', angleDeg: fillAngle[i], heightM: Number.POSITIVE_INFINITY };
    design.kind[i] = shape.kind;
    const falls = fallTable(shape);
    design.fill.set(withFeatures(falls.fill, on, i), i * FALL_COUNT);
    design.carve.set(withFeatures(falls.carve, on, i), i * FALL_COUNT);
    design.rough[i] = shape.kind === 'rough' ? 0.24 : roughness.fillM;
    design.cut[i] = cutSlope[i];
    design.apron[i] = shape.kind === 'flat' ? FLAT_M : 0;
    design.ditch[i] = shape.kind === 'flat' ? 0 : cutShare(road, side, i, land);
    if (stretch && shape.kind !== 'flat' && shape.kind !== 'mound') design.carveLift[i] = 0;
  }
  smooth(design.ditch, 8);
  smooth(design.apron, BLEND_M);
  smooth(design.rough, BLEND_M);
  carryOn(design.carve, design.carveLift);
  liftBeside(design.carveLift);
  blendFalls(design.fill, design.kind);
  blendFalls(design.carve, design.kind, design.carveLift);
  markMixed(design.kind);
}

/** Rounds the edge off, puts a soft shoulder or a wall between it and the slope. */
function withFeatures(fall: Float32Array, on: readonly Feature[], i: number): Float32Array {
  for (const f of on) {
    if (i < f.from || i >= f.to) continue;
    if (f.what === 'rounded') return moved(fall, 2.4, (d) => (fallAt(fall, 2.4) * d * d) / (2 * 2.4 * 2.4), 0.5);
    if (f.what === 'soft shoulder') return moved(fall, 2.5, (d) => 0.165 * d, 0);
    if (f.what === 'retaining wall') return moved(fall, 0.5, (d) => 3.2 * Math.min(1, d / 0.5), 0);
  }
  return fall;
}

/** The fall that begins with `first` over `length` metres and goes on as `fall`, of which `share` of that length is past. */
function moved(fall: Float32Array, length: number, first: (d: number) => number, share: number): Float32Array {
  const out = new Float32Array(FALL_COUNT);
  const base = first(length) - fallAt(fall, share * length);
  for (let i = 0; i < FALL_COUNT; i++) {
    const d = i * FALL_STEP_M;
    out[i] = d < length ? first(d) : base + fallAt(fall, d - (1 - share) * length);
  }
  return out;
}

function fallAt(fall: Float32Array, d: number): number {
  const at = Math.min(FALL_COUNT - 1.001, Math.max(0, d / FALL_STEP_M));
  const k = Math.floor(at);
  return fall[k] + (at - k) * (fall[k + 1] - fall[k]);
}

/** Steepness of the land beside the road, degrees: the steepest of three runs of 20 m from 5 m off the middle. */
function hillside(road: RoadDesign, land: Grid, side: 0 | 1, i: number): number {
  const heights = [5, 25, 45, 65].map((away) => heightBeside(road, land, side, i, away));
  const falls = [0, 1, 2].map((k) => (heights[k] - heights[k + 1]) / 20);
  return toDegrees(Math.atan(Math.max(...falls)));
}

/** How steeply the land rises beside the road, tangent: the steepest of three runs of 15 m from 5 m off the middle. */
function rise(road: RoadDesign, land: Grid, side: 0 | 1, i: number): number {
  const heights = [5, 20, 35, 50].map((away) => heightBeside(road, land, side, i, away));
  return Math.max(...[0, 1, 2].map((k) => (heights[k + 1] - heights[k]) / 15));
}

/** 0 where the land beside the road lies low, 1 where it stands over it and a ditch is dug. */
function cutShare(road: RoadDesign, side: 0 | 1, i: number, land: Grid): number {
  const over = heightBeside(road, land, side, i, road.sides[side].half[i] + 3) - road.line.z[i];
  return 0.4 * Math.min(1, Math.max(0, (over - 0.6) / 1.2));
}

/** Replaces values along a road by their means over ± `half` stations. */
function smooth(values: Float32Array, half: number): void {
  const before = values.slice();
  for (let i = 0; i < values.length; i++) {
    let sum = 0;
    for (let k = -half; k <= half; k++) sum += before[Math.min(values.length - 1, Math.max(0, i + k))];
    values[i] = sum / (2 * half + 1);
  }
}

/** Gives the stations outside the stretches (lift not 0) the carved floor of the nearest station inside one. */
function carryOn(carve: Float32Array, lift: Float32Array): void {
  const count = lift.length;
  const inside = Array.from({ length: count }, (_, i) => i).filter((i) => lift[i] === 0);
  for (let i = 0, k = 0; i < count && inside.length; i++) {
    if (lift[i] === 0) continue;
    while (k + 1 < inside.length && Math.abs(inside[k + 1] - i) <= Math.abs(inside[k] - i)) k++;
    const from = inside[k] * FALL_COUNT;
    carve.copyWithin(i * FALL_COUNT, from, from + FALL_COUNT);
  }
}

/** Lets what is carved run out along the road: up 0.7 m a metre beyond a stretch's ends, 50 m far. */
function liftBeside(lift: Float32Array): void {
  for (let i = 1; i < lift.length; i++) lift[i] = Math.min(lift[i], lift[i - 1] + 0.7);
  for (let i = lift.length - 2; i >= 0; i--) lift[i] = Math.min(lift[i], lift[i + 1] + 0.7);
  for (let i = 0; i < lift.length; i++) if (lift[i] > 35) lift[i] = Number.POSITIVE_INFINITY;
}

/** Shapes of slope turn into one another over this far on either side of where they meet, metres. */
const BLEND_M = 12;

/** Turns one shape of slope into the next; where `lift` is given, only between stretches that meet. */
function blendFalls(fall: Float32Array, kind: readonly SlopeKind[], lift?: Float32Array): void {
  const half = BLEND_M;
  for (let i = 1; i < kind.length; i++) {
    if (kind[i] === kind[i - 1] || (lift && (lift[i] > 0 || lift[i - 1] > 0))) continue;
    const a = Math.max(0, i - 1 - half);
    const b = Math.min(kind.length - 1, i + half);
    for (let k = 0; k < FALL_COUNT; k++) {
      const first = fall[a * FALL_COUNT + k];
      const last = fall[b * FALL_COUNT + k];
      for (let j = a + 1; j < b; j++) fall[j * FALL_COUNT + k] = first + ((j - a) / (b - a)) * (last - first);
    }
  }
}

/** Calls the stations where two shapes are blended by neither name. */
function markMixed(kind: SlopeKind[]): void {
  const before = kind.slice();
  for (let i = 1; i < kind.length; i++) {
    if (before[i] !== before[i - 1]) kind.fill('mixed', Math.max(0, i - BLEND_M), Math.min(kind.length, i + BLEND_M));
  }
}
