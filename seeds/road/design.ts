import type { Grid } from '../../src/terrain/index.ts';
import { seededRandom, toDegrees } from '../../src/units/index.ts';
import { benches, type Feature, features, type RoadKey, roughness, seed } from '../recipe.ts';
import type { Line } from './line.ts';
import type { RoadLine } from './plan.ts';
import { FALL_COUNT, FALL_STEP_M, FLAT_M, fallTable, type SlopeKind, type SlopeShape } from './shapes.ts';
import { heightBeside, type Stretch, scheduleSlopes } from './stretches.ts';

/** One side of a road, a value a station; side 0 is left of the direction of drawing, side 1 right. */
export interface SideDesign {
  /** Middle line to the edge of the bench, metres. */
  readonly half: Float32Array;
  /** Falls of the fill and of the carved floor, FALL_COUNT values a station. */
  readonly fill: Float32Array;
  readonly carve: Float32Array;
  /** Kind of the slope laid down. */
  readonly kind: SlopeKind[];
  /** Added to the fall where the land is carved away down to it; Infinity where it is not. */
  readonly carveLift: Float32Array;
  /** Slope of the cut above, tangent, and depth of its ditch, metres. */
  readonly cut: Float32Array;
  readonly ditch: Float32Array;
  /** Rms of the unevenness of what is laid down, metres. */
  readonly rough: Float32Array;
  /** Height of the berm just inside the edge, metres. */
  readonly berm: Float32Array;
  /** Level ground beside the road before the cut rises, metres. */
  readonly apron: Float32Array;
}

export interface RoadDesign {
  readonly key: RoadKey;
  readonly name: string;
  readonly line: Line;
  readonly second: boolean;
  /** Unit vector along the road, x and y, a value a station. */
  readonly tx: Float64Array;
  readonly ty: Float64Array;
  /** Fall of the bench to the right, tangent. */
  readonly crossfall: Float32Array;
  readonly sides: readonly [SideDesign, SideDesign];
  /** 1 where there is no ground under the road (a bridge). */
  readonly gap: Uint8Array;
}

/** Works out bench, slopes and cuts of every road for every metre. `land` is the ground before roads, metres. */
export function designRoads(lines: readonly RoadLine[], land: Grid): RoadDesign[] {
  return lines.map((road, index) => {
    const bare = bareDesign(road, seed + 40 + index);
    const mine = features.filter((feature) => feature.road === road.key && !road.second);
    layWidths(bare, mine);
    const stretches = road.second ? [] : scheduleSlopes(bare, land, mine, lines, seed + 60 + index);
    for (const side of [0, 1] as const) laySlopes(bare, side, stretches, land, mine, seed + 80 + index * 2 + side);
    for (const f of mine) if (f.what === 'bridge') bare.gap.fill(1, f.from, f.to);
    return bare;
  });
}

/** Edge height at a station, metres: the middle's, plus what the crossfall gives. */
export const edgeZ = (road: RoadDesign, side: 0 | 1, i: number): number =>
  road.line.z[i] + (side === 0 ? 1 : -1) * road.crossfall[i] * road.sides[side].half[i];

function bareDesign({ key, name, line, second }: RoadLine, from: number): RoadDesign {
  const count = line.s.length;
  const tx = new Float64Array(count);
  const ty = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const a = Math.max(0, i - 1);
    const b = Math.min(count - 1, i + 1);
    const length = Math.hypot(line.x[b] - line.x[a], line.y[b] - line.y[a]);
    tx[i] = (line.x[b] - line.x[a]) / length;
    ty[i] = (line.y[b] - line.y[a]) / length;
  }
  const crossfall = wander(count, 60, from).map((v) => 0.012 * v + 0.012);
  const side = (): SideDesign => ({
    half: new Float32Array(count),
    fill: new Float32Array(count * FALL_COUNT),
    carve: new Float32Array(count * FALL_COUNT),
    kind: new Array<SlopeKind>(count).fill('natural'),
    carveLift: new Float32Array(count).fill(Number.POSITIVE_INFINITY),
    cut: new Float32Array(count),
    ditch: new Float32Array(count),
    rough: new Float32Array(count),
    berm: new Float32Array(count),
    apron: new Float32Array(count),
  });
  return { key, name, line, second, tx, ty, crossfall, sides: [side(), side()], gap: new Uint8Array(count) };
}

/** Smooth seeded chance along a road, mean 0, rms about 1, wave length about four times `scaleM`. */
export function wander(count: number, scaleM: number, from: number): Float32Array {
  const random = seededRandom(from);
  const knots = Float32Array.from({ length: Math.ceil(count / scaleM) + 4 }, () => random.normal() * 1.4);
  return Float32Array.from({ length: count }, (_, i) => {
    const at = i / scaleM;
    const k = Math.floor(at);
    const t = at - k;
    const u = 1 - t;
    const w = [u * u * u, 3 * t * t * t - 6 * t * t + 4, 3 * u * u * u - 6 * u * u + 4, t * t * t];
    return (w[0] * knots[k] + w[1] * knots[k + 1] + w[2] * knots[k + 2] + w[3] * knots[k + 3]) / 6;
  });
}

const touches = (feature: Feature, side: 0 | 1) =>
  feature.side === 'both' || (feature.side === 'left') === (side === 0);

function layWidths(road: RoadDesign, mine: readonly Feature[]): void {
  const { halfM, wanderM } = benches[road.key];
  const count = road.line.s.length;
  for (const side of [0, 1] as const) {
    const { half } = road.sides[side];
    const noise = wander(count, 18, seed + 20 + side + road.key.length);
    const wide = road.second ? 2.6 : halfM;
    for (let i = 0; i < count; i++) half[i] = wide + wanderM * noise[i];
    for (const f of mine) {
      if (!touches(f, side)) continue;
      if (f.what === 'turnout') spread(half, f, 3.4, 11);
      if (f.what === 'hairpin') spread(half, f, 0.8, 15);
      if (f.what === 'berm') spread(road.sides[side].berm, f, 0.42, 6);
    }
  }
}

/** Adds `amount` over a feature's stations, tapering evenly over `taperM` before and after. */
function spread(values: Float32Array, { from, to }: Feature, amount: number, taperM: number): void {
  for (let i = Math.max(0, from - taperM); i < Math.min(values.length, to + taperM); i++) {
    values[i] += amount * Math.min(1, (i - from + taperM) / taperM, (to + taperM - i) / taperM);
  }
}

function laySlopes(
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
  const cutSlope = wander(count, 40, from + 7).map((v) => 1 + 0.22 * v);
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
    design.cut[i] = Math.max(0.6, cutSlope[i]);
    design.apron[i] = shape.kind === 'flat' ? FLAT_M : 0;
    design.ditch[i] = shape.kind === 'flat' ? 0 : cutShare(road, side, i, land);
    if (stretch) design.carveLift[i] = 0;
  }
  smoothDitch(design.ditch);
  liftBeside(design.carveLift);
  blendFalls(design.fill, design.kind);
  blendFalls(design.carve, design.kind);
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

/** 0 where the land beside the road lies low, 1 where it stands over it and a ditch is dug. */
function cutShare(road: RoadDesign, side: 0 | 1, i: number, land: Grid): number {
  const over = heightBeside(road, land, side, i, road.sides[side].half[i] + 3) - road.line.z[i];
  return 0.4 * Math.min(1, Math.max(0, (over - 0.6) / 1.2));
}

function smoothDitch(ditch: Float32Array): void {
  const before = ditch.slice();
  for (let i = 0; i < ditch.length; i++) {
    let sum = 0;
    for (let k = -8; k <= 8; k++) sum += before[Math.min(ditch.length - 1, Math.max(0, i + k))];
    ditch[i] = sum / 17;
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

/** Turns one shape of slope into the next. */
function blendFalls(fall: Float32Array, kind: readonly SlopeKind[]): void {
  const half = BLEND_M;
  for (let i = 1; i < kind.length; i++) {
    if (kind[i] === kind[i - 1]) continue;
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
