import type { Study } from '../study/index.ts';
import { drawingPair } from './drawing-pair.ts';
import { palettes } from './palette.ts';
import { makePens } from './pens.ts';
import { type PlanViewDrawing, planViewSvg } from './plan-view.ts';
import type { ProfileScale } from './profile-scale.ts';
import { sheet } from './sheet.ts';
import { shownLayouts } from './shown-layouts.ts';

/** Where a pair has its metres, in units of its view box; for what a screen lays over it. */
export interface PairScale extends ProfileScale {
  /** y of the descent on the plan view, and of its lower neat line. */
  readonly planY: number;
  readonly planBottom: number;
}

export interface PairView {
  readonly svg: string;
  /** Null where the study has no descent: there is the plan view alone. */
  readonly at: PairScale | null;
}

const MARGIN = 10;

/**
 * Plan view and true-scale profile under it, in one frame: one scale both ways and for both, one x axis, one pair of scale bars. The
 * layout with `layoutId` (null: the first by rank) in full, the best of the other kind dashed.
 */
export function pairView(study: Study, layoutId: string | null, drawing: PlanViewDrawing): PairView {
  if (!study.bench || !study.descent || !study.profile) return { svg: planViewSvg(study, layoutId, drawing), at: null };
  const { units, width, height, places } = drawing;
  const pens = makePens(palettes[drawing.palette ?? 'light']);
  const place = { x: MARGIN, y: MARGIN, width: width - 2 * MARGIN, height: height - 2 * MARGIN };
  const pair = drawingPair(study, shownLayouts(study, layoutId), place, units, pens, places);
  const title = `Plan view and true-scale profile. ${study.sentence}`;
  const svg = sheet({ width, height, pens, name: 'pair-drawing', title }, pair.svg);
  const { plan, profile } = pair;
  if (!plan || !profile) return { svg, at: null };
  const { px, py, scale } = profile;
  return {
    svg,
    at: { px, py, distanceAt: (x) => (x - px(0)) / scale, planY: plan.edgeY, planBottom: plan.box.y1 },
  };
}
