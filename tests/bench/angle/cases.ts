import { seededRandom } from '../../../src/units/index.ts';
import { type SlopeCase, type SlopeKind, slopeGround, slopeKinds } from '../../helpers/slope-ground.ts';
import { type SlopeSample, sampleSlope } from '../../helpers/slope-ground-sample.ts';

export type SampledCase = SlopeCase & SlopeSample;

/** What is drawn for the cases: which kinds, raster errors and waves. */
export interface CaseRange {
  readonly kinds: readonly SlopeKind[];
  readonly sigmaM: readonly [number, number];
  readonly correlationM: readonly number[];
  readonly wavesM: readonly number[];
  readonly lengthM: readonly [number, number];
}

const whole: CaseRange = {
  kinds: slopeKinds,
  sigmaM: [0.04, 0.2],
  correlationM: [0.5, 1, 2, 5, 10],
  wavesM: [0],
  lengthM: [20, 120],
};

/** Hillsides as measured on open lidar and as the demo district builds them: waves on everything, error 0.05 to 0.10 m. */
const lidar: CaseRange = {
  kinds: ['plane', 'two', 'three', 'convex', 'concave', 'S', 'bench'],
  sigmaM: [0.05, 0.1],
  correlationM: [0.5, 2, 5, 10],
  wavesM: [0.02, 0.05, 0.08, 0.1],
  lengthM: [12, 120],
};

export const ranges: Readonly<Record<string, CaseRange>> = { lidar, whole };

/** Cases by number, drawn from a seed; lengths in whole metres. */
export function* sampledCases(range: CaseRange, count: number, seed: number): Generator<SampledCase> {
  const random = seededRandom(seed);
  const pick = <T>(of: readonly T[]): T => of[Math.floor(random.next() * of.length)];
  for (let i = 0; i < count; i++) {
    const c: SlopeCase = {
      kind: range.kinds[i % range.kinds.length],
      lengthM: Math.round(range.lengthM[0] * (range.lengthM[1] / range.lengthM[0]) ** random.next()),
      sigmaM: range.sigmaM[0] * (range.sigmaM[1] / range.sigmaM[0]) ** random.next(),
      correlationM: pick(range.correlationM),
      wavesM: pick(range.wavesM),
      steepDeg: 18 + 38 * random.next(),
      seed: Math.floor(random.next() * 2 ** 31),
      cellM: 1,
    };
    yield { ...c, ...sampleSlope(slopeGround(c), c) };
  }
}
