import type { StudyLayout } from '../../study/index.ts';

/**
 * Where the raise is reset, as shares of its length, 0 at the load and 1 at the landing: one for each reset. The first pull also
 * takes up the rope's stretch, so that all pulls but the last are drawn alike.
 */
export function resetShares({ pulls, resets }: Pick<StudyLayout, 'pulls' | 'resets'>): number[] {
  return Array.from({ length: Math.max(0, resets) }, (_, i) => (i + 1) / pulls);
}
