import type { Study } from '../study/index.ts';
import type { UnitSystem } from '../units/index.ts';
import { type PaletteName, palettes } from './palette.ts';
import { makePens } from './pens.ts';
import type { ShownPlace } from './place-words.ts';
import { planDrawing } from './plan-drawing.ts';
import { planExtent } from './plan-extent.ts';
import { planFrame } from './plan-frame.ts';
import { planGround } from './plan-ground.ts';
import { scaleBars } from './scale-bars.ts';
import { sheet } from './sheet.ts';
import { shownLayouts } from './shown-layouts.ts';
import { text } from './svg.ts';
import { whyNothing } from './why-nothing.ts';
import { wrap } from './wrap.ts';

export interface PlanViewDrawing {
  readonly units: UnitSystem;
  /** Size in units of the view box; 96 units are one inch on paper. */
  readonly width: number;
  readonly height: number;
  readonly palette?: PaletteName;
  /** Landing zones, staging and parking surveyed for the site. */
  readonly places?: readonly ShownPlace[];
}

const MARGIN = 8;
/** Room for the scale bars under the view. */
const FOOT = 40;
const MOST_SCALE = 16;
/** Under this width, drawing units, forces and clearances are left to the notes: their words would stand on one another. */
const NARROW = 530;

/**
 * The plan view of a study as SVG text, to scale, the descent running to the right: bench as measured, the layout with
 * `layoutId` (null: the first by rank) in full and the best of the other kind dashed, marks, north, scale bars. Where
 * there is nothing to draw it says why in place.
 */
export function planViewSvg(study: Study, layoutId: string | null, drawing: PlanViewDrawing): string {
  const { units, width, height } = drawing;
  const pens = makePens(palettes[drawing.palette ?? 'light']);
  const page = { width, height, pens, name: 'plan-drawing', title: `Plan view. ${study.sentence}` };
  const why = whyNothing(study);
  if (!study.bench) {
    const lines = wrap(why ?? study.sentence, width - 48, 7);
    return sheet(page, lines.map((words, i) => text(24, 40 + 18 * i, words, pens.word)).join(''));
  }
  const shown = shownLayouts(study, layoutId);
  const ground = planGround(study);
  const { behindM, aheadM, leftM, rightM } = planExtent(study, ground, shown);
  const box = { x0: MARGIN, y0: MARGIN, x1: width - MARGIN, y1: height - MARGIN - FOOT };
  const scale = Math.min((box.x1 - box.x0) / (behindM + aheadM), (box.y1 - box.y0) / (leftM + rightM), MOST_SCALE);
  const spare = box.y1 - box.y0 - (leftM + rightM) * scale;
  const frame = planFrame(ground, pens, {
    ...{ scale, box, brief: width < NARROW },
    edgeX: box.x0 + behindM * scale,
    edgeY: box.y0 + spare / 2 + leftM * scale,
  });
  const note = why ? wrap(why, Math.min(420, width - 60), 7) : [];
  note.forEach((words, i) => {
    const [x, y] = [box.x1 - 20 - Math.min(420, width - 60), box.y0 + 24 + 18 * i];
    frame.taken.push({ x0: x, y0: y - 13, x1: x + words.length * 7, y1: y + 5 });
  });
  const words = note.map((line, i) =>
    text(box.x1 - 20 - Math.min(420, width - 60), box.y0 + 24 + 18 * i, line, pens.word),
  );
  const plan = planDrawing(study, shown, frame, units, { places: drawing.places ?? [] });
  return sheet(
    page,
    plan.svg +
      words.join('') +
      (plan.contours === '' ? '' : text(box.x0, box.y1 + 20, plan.contours, pens.small)) +
      scaleBars({ x: box.x1, y: box.y1 + 14, scale, units, pens }),
  );
}
