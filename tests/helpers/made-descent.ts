import { defaultAngleRule } from '../../src/book/index.ts';
import {
  type Crossing,
  type Descent,
  groundLength,
  groundToLitter,
  lineBetween,
  profileOf,
  ropeLine,
  smoothedGroundLength,
} from '../../src/descent/index.ts';
import { toRadians } from '../../src/units/index.ts';

/** A plane slope below an edge point, by formula: degrees, metres. */
export interface MadeDescent {
  readonly x: number;
  readonly y: number;
  /** Unit vector down the slope. */
  readonly dx: number;
  readonly dy: number;
  readonly angleDeg: number;
  /** Along the ground. */
  readonly groundM: number;
  readonly lipDeg?: number;
  readonly crossings?: readonly Crossing[];
  readonly planAs?: 'low' | 'steep' | 'high';
}

const STEP_M = 0.5;

/** A descent as `workUpDescent` would give it for that slope, below a level bench. */
export function madeDescent(made: MadeDescent): Descent {
  const { x, y, dx, dy, angleDeg, groundM } = made;
  const lengthM = groundM * Math.cos(toRadians(angleDeg));
  const fall = Math.tan(toRadians(angleDeg));
  const line = lineBetween({ x, y }, { x: x + dx * lengthM, y: y + dy * lengthM }, 'ground levels')!;
  const count = Math.ceil(lengthM / STEP_M) + 1;
  const distanceM = Float64Array.from({ length: count }, (_, i) => Math.min(i * STEP_M, lengthM));
  const elevationM = distanceM.map((d) => 100 - d * fall);
  const profile = profileOf(distanceM, elevationM, STEP_M, Math.min(5, lengthM));
  const back = Float64Array.from({ length: 28 }, (_, i) => -(i + 1) * STEP_M);
  const planAs = made.planAs ?? (angleDeg < 30 ? 'low' : angleDeg < 45 ? 'steep' : 'high');
  return {
    ...{ line, profile, dropM: lengthM * fall, endElevationM: 100 - lengthM * fall, meanDeg: angleDeg },
    groundLengthM: groundLength(profile),
    smoothedGroundLengthM: smoothedGroundLength(profile),
    rope: ropeLine(profile, groundToLitter),
    ...{ crossings: made.crossings ?? [], steps: [], sightLostAtM: null, nearestEdgeTaken: false },
    behind: { distanceM: back, elevationM: back.map(() => 100) },
    lipAngleDeg: made.lipDeg ?? angleDeg,
    angle: {
      ...{ governingDeg: angleDeg, governingSigmaDeg: 0.5, rangeDeg: [angleDeg - 1, angleDeg + 1] },
      ...{ stretchM: [0, Math.min(5, lengthM)], windowM: 5, class: planAs, planAs },
      probability: {
        low: planAs === 'low' ? 1 : 0,
        steep: planAs === 'steep' ? 1 : 0,
        high: planAs === 'high' ? 1 : 0,
      },
      ...{ rule: defaultAngleRule, weight: { ropePull: 0.5, groundPress: 0.8 } },
      ...{ rough: false, shortPosts: null, errorUnknown: false },
    } as Descent['angle'],
    ...{ nearbyMaxDeg: angleDeg, sidePullDeg: null, whole: null },
    fall: {
      x: Float64Array.of(x, line.end.x),
      y: Float64Array.of(y, line.end.y),
      heightM: Float64Array.of(100, 0),
    } as never,
  };
}
