import type { Step } from './step.ts';

/** A wall told twice stands this near to itself, metres. */
const SAME_WITHIN_M = 3;
const rank = { ground: 0, map: 1, mark: 2, measured: 3 } as const;

/**
 * Steps by distance, each wall once: of those within 3 m of the one before, the tallest height and the nearest place are
 * kept, and what people set (a mark, then a map) names it rather than the ground.
 */
export function mergeSteps(steps: readonly Step[]): Step[] {
  const merged: Step[] = [];
  for (const step of [...steps].sort((a, b) => a.distanceM - b.distanceM)) {
    const last = merged.at(-1);
    if (!last || step.distanceM - last.distanceM > SAME_WITHIN_M) merged.push(step);
    else {
      merged[merged.length - 1] = {
        distanceM: last.distanceM,
        heightM: Math.max(last.heightM, step.heightM),
        source: rank[step.source] > rank[last.source] ? step.source : last.source,
      };
    }
  }
  return merged;
}
