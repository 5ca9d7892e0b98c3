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
  let nearest: EdgeClearance | null = null;
  for (const side of [bench.left, bench.right]) {
    const { edgeX, edgeY, fallM, sigmaM } = side;
    const falls = (i: number): boolean => {
      const kind = edgeKindAt(side, i);
      return kind === 'drop' || kind === 'bank' || (kind === 'rise' && fallM[i] > 0);
    };
    for (let i = Math.max(0, first - BEYOND); i < Math.min(bench.count - 1, last + BEYOND); i++) {
      if (!falls(i) || !falls(i + 1) || Number.isNaN(edgeX[i] + edgeX[i + 1])) continue;
      const distanceM = segmentToBoxM(box, edgeX[i], edgeY[i], edgeX[i + 1], edgeY[i + 1]);
      if (nearest === null || distanceM < nearest.distanceM) {
        nearest = { distanceM, sigmaM: Math.max(sigmaM[i], sigmaM[i + 1]) };
      }
    }
  }
  return nearest;
}
