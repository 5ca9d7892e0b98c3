/** How a slope below a road falls; the words of the answer key. */
export type SlopeKind =
  | 'natural'
  | 'plane'
  | 'two'
  | 'three'
  | 'convex'
  | 'concave'
  | 'S'
  | 'bench'
  | 'rough'
  | 'wall'
  | 'flat'
  | 'mound'
  | 'mixed';

/** A slope from the road's edge outward, as it is laid down before its unevenness. */
export interface SlopeShape {
  readonly kind: SlopeKind;
  /** Steepest part, degrees; of a natural slope the fill that ends on it. */
  readonly angleDeg: number;
  /** Fall to the foot, metres; Infinity where the fill goes on until it meets the land. */
  readonly heightM: number;
  /** Slope below the foot, tangent. */
  readonly outer?: number;
}

/** Distance between the values of a fall table, metres. */
export const FALL_STEP_M = 0.5;
/** Values in a fall table: 0 to 110 m. */
export const FALL_COUNT = 221;

/** Level ground on either side of a flat stretch, metres. */
export const FLAT_M = 46;

const FOOT_M = 22;
const FOOT_SLOPE = 0.05;
const OUTER_SLOPE = 0.72;
/** What is carved out below a road rises again beyond the foot, tangent. */
const CARVE_RISE = 0.6;

/** Fall below the edge, metres, every FALL_STEP_M of horizontal distance: the slope, a nearly level foot, then down again. */
export function fallTable(shape: SlopeShape): Falls {
  const fill = new Float32Array(FALL_COUNT);
  const carve = new Float32Array(FALL_COUNT);
  const steep = Math.tan((shape.angleDeg * Math.PI) / 180);
  const slope = slopes[shape.kind](steep, shape.heightM);
  const goesOn = shape.kind === 'flat' || shape.kind === 'mound';
  let fallen = 0;
  let floor = 0;
  let foot = 0;
  for (let i = 1; i < FALL_COUNT; i++) {
    for (let part = 0; part < PARTS; part++) {
      const at = (i - 1 + (part + 0.5) / PARTS) * FALL_STEP_M;
      const step = FALL_STEP_M / PARTS;
      const onFoot = !goesOn && fallen >= shape.heightM;
      if (onFoot) foot += step;
      const fall = !onFoot ? slope(at, fallen) : foot < FOOT_M ? FOOT_SLOPE : (shape.outer ?? OUTER_SLOPE);
      fallen += fall * step;
      floor = foot < FOOT_M ? fallen : floor - CARVE_RISE * step;
    }
    fill[i] = fallen;
    carve[i] = floor;
  }
  return { fill, carve };
}

/** Each table step is summed from this many parts, so that breaks move evenly from station to station. */
const PARTS = 10;

/** Falls below the edge of what is filled, and of the floor that land is carved down to; FALL_COUNT values each, metres. */
export interface Falls {
  readonly fill: Float32Array;
  readonly carve: Float32Array;
}

/** A gentler part of a slope, never so gentle that it is no drop any more. */
const eased = (steep: number, share: number): number => Math.max(Math.min(steep, 0.32), steep * share);

type Slope = (distanceM: number, fallenM: number) => number;

/** Tangent of the slope at a distance from the edge, where `fallen` metres of the height `h` lie above. */
const slopes: Readonly<Record<SlopeKind, (steep: number, h: number) => Slope>> = {
  natural: (steep) => () => steep,
  plane: (steep) => () => steep,
  rough: (steep) => () => steep,
  two: (steep, h) => (_, fallen) => (fallen < 0.45 * h ? eased(steep, 0.72) : steep),
  three: (steep, h) => (_, fallen) => (fallen < 0.3 * h ? eased(steep, 0.8) : fallen < 0.7 * h ? steep : steep * 0.62),
  convex: (steep, h) => (_, fallen) => eased(steep, 0.6 + 0.4 * Math.min(1, fallen / (0.7 * h))),
  concave: (steep, h) => (_, fallen) => steep * (1 - 0.45 * Math.max(0, (fallen - 0.3 * h) / (0.7 * h))),
  S: (steep, h) => (_, fallen) => eased(steep, 0.62 + 0.38 * Math.sin(Math.PI * Math.min(1, Math.max(0, fallen / h)))),
  bench: (steep, h) => {
    let from = -1;
    return (distance, fallen) => {
      if (fallen < 0.45 * h) return steep;
      if (from < 0) from = distance;
      return distance - from < 5 ? 0.04 : steep;
    };
  },
  wall: (steep, h) => {
    let dropped = 0;
    return (_, fallen) => {
      if (fallen < 0.35 * h || dropped >= 2.6) return steep;
      dropped += 0.65;
      return 0.65 / (FALL_STEP_M / PARTS);
    };
  },
  flat: () => (distance) => (distance < FLAT_M ? 0.015 : 0.95),
  mixed: (steep) => () => steep,
  mound: () => (distance, fallen) => (distance < 12 && fallen > -3.6 ? -0.85 : distance < 18 ? 0 : 0.95),
};
