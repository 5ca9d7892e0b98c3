import { angleKnots, type GoverningAngle, governingAngle, type SlopeModel } from '../../../src/descent/index.ts';
import type { SlopeCase } from '../../helpers/slope-ground.ts';
import type { SampledCase } from './cases.ts';

/** A simulated hillside with what is told of it. */
export interface Estimated extends SlopeCase {
  readonly truthDeg: number;
  readonly angle: GoverningAngle;
}

/** Estimates one case under a stated error, metres, or null for unknown. */
export function estimate(c: SampledCase, sigmaM: number | null, model?: SlopeModel): Estimated {
  const knots = angleKnots(c.lengthM, c.cellM, 5);
  if (!knots) throw new RangeError(`A case of ${c.lengthM} m is too short.`);
  return { ...c, angle: governingAngle(knots, c.knotHeightM, sigmaM, model) };
}
