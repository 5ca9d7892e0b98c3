import { type Bench, edgeKindAt } from '../road/index.ts';
import { type Box, segmentToBoxM } from './box-hit.ts';

/** How near a box comes to where the ground falls, and how well that edge is known, metres. */
export interface EdgeClearance {
  readonly distanceM: number;
  /** One sigma of the edge there; NaN where nobody knows. */
  readonly sigmaM: number;
}

/** Edges farther along than this cannot be the nearest, stations. */
const BEYOND = 12;

/**
 * Least distance, measured straight, from a box that spans elements `first` to `last` to the edge as a line, on whichever
 * side it is nearer; null where no ground falls near it.
 */
export function edgeClearance(bench: Bench, box: Box, first: number, last: number): EdgeClearance | null {
  const reachM = lengthOf(box.halfLengthM, box.halfWidthM);
  let distanceM = Number.POSITIVE_INFINITY;
  let worstM = 0;
  for (const side of [bench.left, bench.right]) {
    const { edgeX, edgeY, fallM, sigmaM } = side;
    const falls = (i: number): boolean => {
      const kind = edgeKindAt(side, i);
      return kind === 'drop' || kind === 'bank' || (kind === 'rise' && fallM[i] > 0);
    };
    for (let i = Math.max(0, first - BEYOND); i < Math.min(bench.count - 1, last + BEYOND); i++) {
      if (!falls(i) || !falls(i + 1) || Number.isNaN(edgeX[i] + edgeX[i + 1])) continue;
      const lengthM = lengthOf(edgeX[i + 1] - edgeX[i], edgeY[i + 1] - edgeY[i]);
      // No nearer than that can the segment be: a sieve before the exact distance.
      if (lengthOf(edgeX[i] - box.x, edgeY[i] - box.y) - reachM - lengthM >= distanceM) continue;
      const here = segmentToBoxM(box, edgeX[i], edgeY[i], edgeX[i + 1], edgeY[i + 1]);
      if (here < distanceM) {
        distanceM = here;
        worstM = Math.max(sigmaM[i], sigmaM[i + 1]);
      }
    }
  }
  return distanceM < Number.POSITIVE_INFINITY ? { distanceM, sigmaM: worstM } : null;
}

/** `Math.hypot` makes objects; a search asks this for every edge near every spot. */
const lengthOf = (x: number, y: number): number => Math.sqrt(x * x + y * y);
