import { localPlane } from '../../src/geo/index.ts';
import type { Grid, Ground, SurfaceInfo } from '../../src/terrain/index.ts';
import { type Random, seededRandom } from '../../src/units/index.ts';

/** A function of the distance along the true road line, metres in and out. */
export type Along = (s: number) => number;

/** What lies beyond one end of the bench, as functions of the distance along the road. Angles as tangents, positive. */
export interface SideShape {
  /** Distance from the true road line to the end of the hard bench, metres. */
  readonly width: Along;
  /** −1 where the side is a fill, +1 where it is a cut, 0 level; between them the side turns from one to the other. */
  readonly turn: Along;
  /** Slope next to the bench, how far it runs in plan, and the natural slope under or above it. */
  readonly slope: Along;
  readonly runM: Along;
  readonly natural: Along;
  /** Soft shoulder between the bench and the slope. */
  readonly soft?: { readonly widthM: Along; readonly slope: number };
  /** Radius over which the corner is rounded, measured along the ground, metres. */
  readonly rounding?: Along;
  /** A low ridge of earth: height, width and how far inside the end of the bench its middle lies, metres. */
  readonly berm?: { readonly heightM: Along; readonly widthM: number; readonly insideM: number };
  /** A ditch that starts at the end of the bench: depth and width, metres. */
  readonly ditch?: { readonly depthM: Along; readonly widthM: number };
  /** A level bench on the slope: plan distance beyond the end of the road bench, and width, metres. */
  readonly secondBench?: { readonly atM: number; readonly widthM: number };
}

/** A whole invented road on a hillside that follows it. */
export interface RoadSpec {
  readonly seed: number;
  readonly lengthM: number;
  /** Curvature of the true road line, 1/m, positive to the left. */
  readonly curvature: Along;
  readonly grade: Along;
  /** Fall across the bench, positive to the right. */
  readonly crossfall: Along;
  readonly left: SideShape;
  readonly right: SideShape;
  /** Waves of 3 to 10 m off the bench, root mean square, metres. */
  readonly roughM: Along;
  readonly noiseM: number;
  readonly noiseLengthM: number;
  /** How far right of the true road the line is drawn, metres. */
  readonly drawnOff: Along;
  readonly cellM: number;
}

/** The road made: noisy cells, the line as drawn, and the noise-free height at any point. */
export interface RoadGround {
  readonly ground: Ground;
  /** Drawn line, local metres, stride 2. */
  readonly drawn: Float64Array;
  /** True road line at whole metres with its unit normal to the right, local metres. */
  readonly trueX: Float64Array;
  readonly trueY: Float64Array;
  readonly normalX: Float64Array;
  readonly normalY: Float64Array;
  readonly heightAt: (x: number, y: number) => number;
  readonly spec: RoadSpec;
}

const MARGIN_M = 60;

/** Builds the ground of a road: cells are the mean of 2 × 2 sub-samples, as lidar rasters average their returns. */
export function makeRoadGround(spec: RoadSpec): RoadGround {
  const random = seededRandom(spec.seed);
  const centre = layOut(spec, random);
  const rough = makeWaves(random, 14);
  const hard = makeWaves(random, 8);
  const nearest = nearestFinder(centre.x, centre.y);
  const heightAt = (x: number, y: number): number => {
    const { s, q } = nearest(x, y);
    return centre.heightAt(s) + template(spec, s, q) + wavesAt(spec, s, q, x, y, rough, hard);
  };
  const ground = rasterise(spec, centre.x, centre.y, heightAt, random);
  return { ground, drawn: drawLine(spec, centre), ...centre.whole, heightAt, spec };
}

const FINE_M = 0.25;

function layOut(spec: RoadSpec, random: Random) {
  const extra = 30;
  const n = Math.round((spec.lengthM + 2 * extra) / FINE_M) + 1;
  const x = new Float64Array(n);
  const y = new Float64Array(n);
  const z = new Float64Array(n);
  const h = new Float64Array(n);
  h[0] = random.next() * 2 * Math.PI;
  z[0] = 300;
  for (let i = 1; i < n; i++) {
    const s = (i - 0.5) * FINE_M - extra;
    h[i] = h[i - 1]! + spec.curvature(s) * FINE_M;
    const heading = (h[i]! + h[i - 1]!) / 2;
    x[i] = x[i - 1]! + Math.cos(heading) * FINE_M;
    y[i] = y[i - 1]! + Math.sin(heading) * FINE_M;
    z[i] = z[i - 1]! + spec.grade(s) * FINE_M;
  }
  const mid = n >> 1;
  const [mx, my] = [x[mid]!, y[mid]!];
  for (let i = 0; i < n; i++) {
    x[i]! -= mx;
    y[i]! -= my;
  }
  const count = Math.floor(spec.lengthM) + 1;
  const pick = (f: (i: number) => number): Float64Array =>
    Float64Array.from({ length: count }, (_, k) => f(Math.round((k + extra) / FINE_M)));
  const heightAt = (s: number): number => {
    const f = Math.min(n - 1.000001, Math.max(0, (s + extra) / FINE_M));
    const i = Math.floor(f);
    return z[i]! + (f - i) * (z[i + 1]! - z[i]!);
  };
  const whole = {
    trueX: pick((i) => x[i]!),
    trueY: pick((i) => y[i]!),
    normalX: pick((i) => Math.sin(h[i]!)),
    normalY: pick((i) => -Math.cos(h[i]!)),
  };
  return { x, y, heightAt, whole, extra };
}

/** Nearest point of a fine polyline: distance along it (s) and signed distance from it, positive to the right (q). */
function nearestFinder(px: Float64Array, py: Float64Array) {
  const cell = 8;
  const buckets = new Map<number, number[]>();
  const key = (i: number, j: number): number => (i + 500) * 1000 + j + 500;
  for (let i = 0; i < px.length; i += 4) {
    const k = key(Math.floor(px[i]! / cell), Math.floor(py[i]! / cell));
    const list = buckets.get(k);
    if (list) list.push(i);
    else buckets.set(k, [i]);
  }
  return (x: number, y: number): { s: number; q: number } => {
    const bi = Math.floor(x / cell);
    const bj = Math.floor(y / cell);
    let best = Number.POSITIVE_INFINITY;
    let at = 0;
    for (let ring = 0; ring < 14 && (ring - 1) * cell <= Math.sqrt(best); ring++) {
      for (let i = bi - ring; i <= bi + ring; i++) {
        for (let j = bj - ring; j <= bj + ring; j++) {
          if (Math.max(Math.abs(i - bi), Math.abs(j - bj)) !== ring) continue;
          for (const k of buckets.get(key(i, j)) ?? []) {
            const d = (px[k]! - x) ** 2 + (py[k]! - y) ** 2;
            if (d < best) [best, at] = [d, k];
          }
        }
      }
    }
    for (let k = Math.max(0, at - 5); k <= Math.min(px.length - 1, at + 5); k++) {
      const d = (px[k]! - x) ** 2 + (py[k]! - y) ** 2;
      if (d < best) [best, at] = [d, k];
    }
    const k = Math.min(px.length - 2, Math.max(1, at));
    const [tx, ty] = [(px[k + 1]! - px[k - 1]!) / (2 * FINE_M), (py[k + 1]! - py[k - 1]!) / (2 * FINE_M)];
    const [dx, dy] = [x - px[k]!, y - py[k]!];
    return { s: k * FINE_M - 30 + dx * tx + dy * ty, q: dx * ty - dy * tx };
  };
}

/** Height of the cross-section over the road line at signed distance q. */
export function template(spec: RoadSpec, s: number, q: number): number {
  const side = q >= 0 ? spec.right : spec.left;
  const width = side.width(s);
  const d = Math.abs(q) - width;
  const bench = (t: number): number => -spec.crossfall(s) * Math.sign(q) * t;
  let z = d <= 0 ? bench(Math.abs(q)) : bench(width) + beyond(side, s, d, -spec.crossfall(s) * Math.sign(q));
  const r = side.rounding?.(s) ?? 0;
  if (r > 0 && Math.abs(d) < r) z = rounded(side, s, d, r, bench(width), -spec.crossfall(s) * Math.sign(q));
  if (side.berm) {
    const t = (Math.abs(q) - (width - side.berm.insideM)) / (side.berm.widthM / 2);
    if (Math.abs(t) < 1) z += side.berm.heightM(s) * (0.5 + 0.5 * Math.cos(Math.PI * t));
  }
  return z;
}

function beyond(side: SideShape, s: number, d: number, flat: number): number {
  const turn = side.turn(s);
  let z = 0;
  let left = d;
  if (side.ditch && turn > 0) {
    const w = side.ditch.widthM;
    const t = Math.min(left, w);
    z -= side.ditch.depthM(s) * (0.5 - 0.5 * Math.cos((2 * Math.PI * t) / w));
    left -= t;
  }
  if (side.soft && turn < 0) {
    const t = Math.min(left, side.soft.widthM(s));
    z -= side.soft.slope * t;
    left -= t;
  }
  const run = side.runM(s);
  const steep = side.slope(s) * turn + flat * (1 - Math.abs(turn));
  const natural = side.natural(s) * turn + flat * (1 - Math.abs(turn));
  const bench2 = side.secondBench;
  if (bench2 && turn < 0) {
    const a = Math.min(left, bench2.atM);
    const b = Math.min(Math.max(0, left - bench2.atM), bench2.widthM);
    return z + steep * a - 0.02 * b + steep * Math.max(0, left - bench2.atM - bench2.widthM);
  }
  return z + steep * Math.min(left, run) + natural * Math.max(0, left - run);
}

/** A parabola between the bench and the slope, tangent to both at distance r from the corner. */
function rounded(side: SideShape, s: number, d: number, r: number, z0: number, flat: number): number {
  const out = (beyond(side, s, r, flat) - 0) / r;
  const t = d + r;
  return z0 - flat * r + flat * t + ((out - flat) * t * t) / (4 * r);
}

type Waves = { kx: number; ky: number; phase: number; weight: number }[];

function makeWaves(random: Random, count: number): Waves {
  return Array.from({ length: count }, () => {
    const length = 3 + 7 * random.next();
    const direction = random.next() * 2 * Math.PI;
    const k = (2 * Math.PI) / length;
    return {
      kx: k * Math.cos(direction),
      ky: k * Math.sin(direction),
      phase: random.next() * 7,
      weight: Math.sqrt(2 / count),
    };
  });
}

const sumWaves = (waves: Waves, x: number, y: number): number => {
  let sum = 0;
  for (const { kx, ky, phase, weight } of waves) sum += weight * Math.sin(kx * x + ky * y + phase);
  return sum;
};

function wavesAt(spec: RoadSpec, s: number, q: number, x: number, y: number, rough: Waves, hard: Waves): number {
  const d = Math.abs(q) - (q >= 0 ? spec.right : spec.left).width(s);
  const share = Math.min(1, Math.max(0, (d - 0.5) / 2));
  return 0.01 * sumWaves(hard, x, y) * (1 - share) + spec.roughM(s) * sumWaves(rough, x, y) * share;
}

function rasterise(
  spec: RoadSpec,
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
  const fit = Float64Array.of(-grid.x0 / grid.stepX, 1 / grid.stepX, 0, 0, grid.y0 / grid.stepY, 0, -1 / grid.stepY, 0);
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
  const reach = Math.ceil(56 / cell);
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

/** Vertices every 10 m or so, off the true line by `drawnOff`. */
function drawLine(spec: RoadSpec, { whole }: ReturnType<typeof layOut>): Float64Array {
  const out: number[] = [];
  const last = whole.trueX.length - 1;
  for (let k = 0; k <= last; k += 8) {
    const i = k + 8 > last ? last : k;
    const off = spec.drawnOff(i);
    out.push(whole.trueX[i]! + off * whole.normalX[i]!, whole.trueY[i]! + off * whole.normalY[i]!);
  }
  return Float64Array.from(out);
}
