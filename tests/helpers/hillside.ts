import { defaultAngleRule } from '../../src/book/index.ts';
import { localPlane } from '../../src/geo/index.ts';
import { indexRoads, type RoadNetwork } from '../../src/road/index.ts';
import { defaultCircumstances, type StudyInputs } from '../../src/study/index.ts';
import type { Ground, SurfaceInfo } from '../../src/terrain/index.ts';
import { bareEarth, groundFrom } from './plane-ground.ts';

export interface Hillside {
  /** Fall below the road, degrees, for `lengthM` metres of plan; level ground beyond. */
  readonly belowDeg: number;
  readonly lengthM: number;
  /** Rise above the road, degrees; negative where the ground falls on that side too. */
  readonly aboveDeg: number;
  readonly info?: Partial<SurfaceInfo>;
  readonly cellM?: number;
}

/** Half width of the road bench, metres. */
export const BENCH_HALF_M = 4;

/** An east–west road on a bench 8 m wide at 1,000 m: the ground falls to the south and rises to the north. */
export function hillside({ belowDeg, lengthM, aboveDeg, info, cellM = 1 }: Hillside): Ground {
  const tan = (deg: number): number => Math.tan((deg * Math.PI) / 180);
  const height = (_x: number, y: number): number => {
    if (y < -BENCH_HALF_M) return 1000 - Math.min(-y - BENCH_HALF_M, lengthM) * tan(belowDeg);
    return y > BENCH_HALF_M ? 1000 + (y - BENCH_HALF_M) * tan(aboveDeg) : 1000;
  };
  const ground = groundFrom(height, Math.round(800 / cellM) + 1, cellM);
  return {
    plane: ground.plane,
    layers: ground.layers.map((layer) => ({ ...layer, info: { ...bareEarth, cellM, ...info } })),
  };
}

/** The road along that bench, drawn from west to east, so that the drop lies on its right. */
export function roadNetwork(change: Partial<RoadNetwork> = {}, tags: Record<string, string> = {}): RoadNetwork {
  const plane = localPlane({ lon: -128, lat: 44 });
  const line: number[] = [];
  for (let x = -390; x <= 390; x += 30) {
    const { lon, lat } = plane.toLonLat({ x, y: 0 });
    line.push(lon, lat);
  }
  const tagged = { highway: 'tertiary', ...tags };
  return {
    ways: [{ id: 'way/1', name: 'Cinder Grade Road', line: Float64Array.from(line), tags: tagged }],
    features: [],
    ...change,
  };
}

/** Inputs for a study of the middle of that road. */
export function studyInputs(ground: Ground, change: Partial<StudyInputs> = {}): StudyInputs {
  return {
    ground,
    roads: indexRoads(roadNetwork()),
    marks: [],
    at: { lon: -128, lat: 44 },
    side: null,
    patient: null,
    rule: defaultAngleRule,
    ...defaultCircumstances,
    units: 'us',
    ...change,
  };
}
