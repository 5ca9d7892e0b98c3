import type { Study } from '../study/index.ts';
import { keepOutRing, type PlanGround, spotCorners, spotsOf } from './plan-ground.ts';
import type { ShownLayouts } from './shown-layouts.ts';

/** What a plan view must hold, metres from the edge: along the descent and to its right hand. */
export interface PlanExtent {
  readonly behindM: number;
  readonly aheadM: number;
  readonly leftM: number;
  readonly rightM: number;
}

const MARGIN_M = 3;

/** The smallest view of the descent, the bench beside it and everything that the shown layouts take. */
export function planExtent(study: Study, ground: PlanGround, { chosen, other }: ShownLayouts): PlanExtent {
  let behind = 8;
  let ahead = Math.max(8, study.descent?.horizontalM ?? 0);
  let left = 12;
  let right = 12;
  const reach = (points: readonly number[]): void => {
    for (let i = 0; i + 1 < points.length; i += 2) {
      behind = Math.max(behind, -points[i]);
      ahead = Math.max(ahead, points[i]);
      left = Math.max(left, -points[i + 1]);
      right = Math.max(right, points[i + 1]);
    }
  };
  const farEdge = study.bench?.widthM ?? 0;
  behind = Math.max(behind, farEdge + 2);
  for (const layout of [chosen, other]) {
    if (!layout) continue;
    reach(keepOutRing(ground, layout));
    const { points } = layout;
    for (const point of [points.turn, points.anchor, points.belayAnchor, points.handTurn]) {
      if (point) reach(ground.place(point));
    }
    for (const spot of spotsOf(study, layout)) reach(spotCorners(ground, spot));
  }
  return { behindM: behind + MARGIN_M, aheadM: ahead + MARGIN_M, leftM: left + MARGIN_M, rightM: right + MARGIN_M };
}
