import type { Ground } from '../../src/terrain/index.ts';
import { type Random, seededRandom } from '../../src/units/index.ts';
import { daylight, type Hillside } from './daylight.ts';
import { nearestFinder } from './nearest-on-line.ts';
import { rasterise } from './road-raster.ts';
import { template } from './road-template.ts';
import { makeWaves, sumWaves, type Waves } from './road-waves.ts';

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
  /** Where given, the road is cut into this plane hillside instead of the hillside following the road: for hairpins. */
  readonly hillside?: Hillside;
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

/** Builds the ground of a road: cells are the mean of 2 × 2 sub-samples, as lidar rasters average their returns. */
export function makeRoadGround(spec: RoadSpec): RoadGround {
  const random = seededRandom(spec.seed);
  const centre = layOut(spec, random);
  const rough = makeWaves(random, 14);
  const hard = makeWaves(random, 8);
  const nearest = nearestFinder(centre.x, centre.y, FINE_M, -30);
  const hill = spec.hillside
    ? daylight(
        spec.hillside,
        centre.x,
        centre.y,
        centre.z,
        120,
        centre.heading,
        spec.right.width,
        (i) => i * FINE_M - 30,
      )
    : null;
  const heightAt = (x: number, y: number): number => {
    const { s, q } = nearest(x, y);
    const even = hill
      ? hill(x, y) - spec.crossfall(s) * clampTo(q, spec, s)
      : centre.heightAt(s) + template(spec, s, q);
    return even + wavesAt(spec, s, q, x, y, rough, hard);
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
  return { x, y, z, heading: h[extra / FINE_M]!, heightAt, whole, extra };
}

/** Crossfall goes on at the edge's own value beyond it, so that it leaves no step. */
const clampTo = (q: number, { right }: RoadSpec, s: number): number =>
  Math.max(-right.width(s), Math.min(right.width(s), q));

function wavesAt(spec: RoadSpec, s: number, q: number, x: number, y: number, rough: Waves, hard: Waves): number {
  const d = Math.abs(q) - (q >= 0 ? spec.right : spec.left).width(s);
  const share = Math.min(1, Math.max(0, (d - 0.5) / 2));
  return 0.01 * sumWaves(hard, x, y) * (1 - share) + spec.roughM(s) * sumWaves(rough, x, y) * share;
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
