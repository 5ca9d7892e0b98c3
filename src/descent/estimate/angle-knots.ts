import type { Knots } from './roughness-levels.ts';

/** Knots under a slope, of which the last may lie up to half a knot past its end, and the half knot at which windows end. */
export interface AngleKnots extends Knots {
  readonly lastHalfKnot: number;
}

/**
 * The knots on which the angle of a slope is estimated: a whole number in each window, about a metre or a cell apart, from
 * the edge on to the half knot nearest to the end, so that a slope that is steepest at its foot is not cut short; null
 * where the slope is too short for more than one window.
 */
export function angleKnots(lengthM: number, cellM: number, windowM: number): AngleKnots | null {
  const perWindow = Math.max(3, Math.round(windowM / Math.max(1, cellM)));
  const knotM = windowM / perWindow;
  const lastHalfKnot = Math.round((2 * lengthM) / knotM);
  if (lastHalfKnot < 2 * (perWindow + 1)) return null;
  return { count: Math.ceil(lastHalfKnot / 2) + 1, knotM, windowM, lastHalfKnot };
}

/** The same knots without the last one: for a slope past whose end there are no data. */
export const withoutLast = (knots: AngleKnots): AngleKnots => ({
  ...knots,
  count: knots.count - 1,
  lastHalfKnot: 2 * (knots.count - 2),
});
