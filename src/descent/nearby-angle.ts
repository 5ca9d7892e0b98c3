import type { PointM } from '../geo/index.ts';
import { toDegrees } from '../units/index.ts';
import type { DescentLine } from './descent-line.ts';
import { fallSlope } from './estimate/index.ts';
import type { Hill } from './hill.ts';
import { profileStep, windowFor } from './profile.ts';

/** How far along the road neighbours are looked at, and how far apart, metres. */
const REACH_M = 3;
const SPACING_M = 1;

/**
 * Steepest window of the bilinear heights on this descent and on its parallels up to 3 m to either side, degrees. The
 * parallels are as long as the descent and begin on the edge, which there runs along the unit vector `alongEdge`; those
 * without data are left out.
 */
export function nearbyMaxAngle(hill: Hill, line: DescentLine, alongEdge: PointM): number {
  const { start, direction, lengthM } = line;
  const stepM = profileStep(hill.cellM);
  const windowM = windowFor(lengthM, hill.cellM);
  const count = Math.floor(lengthM / stepM + 1e-9) + 1;
  const window = Math.max(1, Math.min(count - 1, Math.round(windowM / stepM)));
  const distance = Float64Array.from({ length: window + 1 }, (_, i) => i * stepM);
  const heights = new Float64Array(count);
  let steepest = -Infinity;
  for (let along = -REACH_M; along <= REACH_M; along += SPACING_M) {
    hill.heights(
      start.x + along * alongEdge.x,
      start.y + along * alongEdge.y,
      direction.x * stepM,
      direction.y * stepM,
      count,
      heights,
      0,
    );
    for (let i = 0; i + window < count; i++) {
      const slope = fallSlope(distance, heights.subarray(i, i + window + 1), 0, window);
      if (slope > steepest) steepest = slope;
    }
  }
  return toDegrees(Math.atan(steepest));
}
