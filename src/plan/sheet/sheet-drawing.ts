import { FOOT_M, type UnitSystem } from '../../units/index.ts';
import { benchRope } from '../bench-rope.ts';
import { benchDimension, drops } from '../drawing-pair.ts';
import type { PlanInset } from '../inset-corner.ts';
import { planDrawing } from '../plan-drawing.ts';
import { planExtent } from '../plan-extent.ts';
import { planFrame } from '../plan-frame.ts';
import { planGround } from '../plan-ground.ts';
import { profileDrawing } from '../profile-drawing.ts';
import { profileFrame, profileSpan } from '../profile-frame.ts';
import { scaleBars, scaleBarsBox } from '../scale-bars.ts';
import { shownLayouts } from '../shown-layouts.ts';
import { text } from '../svg.ts';
import { widthOf } from './measure.ts';
import { PER_MM } from './paper.ts';
import { sheetPens as pens } from './sheet-pens.ts';
import type { PlanSheet } from './sheet-types.ts';

/** Round drawing scales: feet to the inch, and metres to the metre. */
const FEET_PER_INCH = [10, 15, 20, 25, 30, 40, 50, 60, 80, 100, 120, 150, 200, 250, 300, 400];
const RATIOS = [100, 150, 200, 250, 300, 400, 500, 600, 750, 1000, 1250, 1500, 2000, 2500, 3000, 4000, 5000];

/** Between the plan's neat line and the highest ground of the profile: bars and the bench's dimension. */
const GAP = 66;
/** The plan needs room for its labels, however small the scale. */
const LEAST_PLAN = 230;
/** The fan with its words hangs so deep under the edge. */
const LEAST_FAN = 122;
/** Right of the end, for the drop's dimension. */
const RIGHT = 56;

interface Scale {
  readonly perM: number;
  readonly words: string;
}

const scalesOf = (units: UnitSystem): Scale[] =>
  units === 'us'
    ? FEET_PER_INCH.map((feet) => ({ perM: 96 / (feet * FOOT_M), words: `1 in = ${feet} ft` }))
    : RATIOS.map((ratio) => ({ perM: (1000 * PER_MM) / ratio, words: `1 : ${ratio}` }));

/**
 * Plan view over profile in a box of the page, both at the largest round scale that fits, one x axis, height not exaggerated.
 * Nothing where the study has no bench. `inset` says whether the small map found a corner of the plan. Off paper the scale is not named: a screen shows it at any size.
 */
export function sheetDrawing(
  { study, places }: Pick<PlanSheet, 'study' | 'places'>,
  box: { x: number; y: number; width: number; height: number },
  units: UnitSystem,
  { onPaper = true, inset }: { readonly onPaper?: boolean; readonly inset?: PlanInset } = {},
): { readonly svg: string; readonly inset: boolean } {
  if (!study.bench) return { svg: '', inset: false };
  const shown = shownLayouts(study, null);
  const ground = planGround(study);
  const extent = planExtent(study, ground, shown);
  const { profile, edge, descent } = study;
  const span = profile && edge && descent ? profileSpan(study) : null;
  const behindM = Math.max(extent.behindM, ...(span ? profile!.behind.distanceM.map((d) => -d) : []));
  const scales = scalesOf(units);
  const under = (perM: number): number => {
    if (!span) return 34;
    const toEdge = (span.topM - edge!.elevationM) * perM;
    return GAP + Math.max((span.topM - span.bottomM) * perM + 24, toEdge + LEAST_FAN);
  };
  const fits = ({ perM }: Scale): boolean =>
    (behindM + extent.aheadM) * perM + (span ? RIGHT : 0) <= box.width &&
    Math.max(LEAST_PLAN, (extent.leftM + extent.rightM) * perM) + under(perM) <= box.height;
  const { perM: scale, words } = scales.find(fits) ?? scales.at(-1)!;
  const planHeight = box.height - under(scale);
  const spareM = (planHeight / scale - extent.leftM - extent.rightM) / 2;
  const planBox = { x0: box.x, y0: box.y, x1: box.x + box.width, y1: box.y + planHeight };
  const edgeX = box.x + behindM * scale;
  const plan = planFrame(ground, pens, {
    ...{ scale, box: planBox, edgeX, brief: true },
    edgeY: box.y + (extent.leftM + spareM) * scale,
  });
  const bars = { x: planBox.x1, y: planBox.y1 + 12 };
  const drawn = planDrawing(study, shown, plan, units, { places, ...(inset && { inset }) });
  const how = 'height not exaggerated';
  // A narrow screen has no room for all of it in a line.
  const told = onPaper ? [listed([words, drawn.contours, how])] : [how, drawn.contours];
  let svg = drawn.svg + scaleBars({ ...bars, scale, units, pens });
  told.forEach((line, i) => {
    if (line === '') return;
    svg += text(planBox.x1, planBox.y1 + 46 + 13 * i, line, { ...pens.number, 'text-anchor': 'end' });
  });
  if (!span) return { svg, inset: drawn.inset };
  const frame = profileFrame(study, {
    ...{ scale, edgeX, pens, topY: planBox.y1 + GAP },
    box: { x0: box.x, y0: planBox.y1 + 20, x1: box.x + box.width, y1: box.y + box.height },
  });
  frame.taken.push(scaleBarsBox(bars), {
    x0: bars.x - Math.max(...told.map((line) => widthOf(line, pens.number))),
    y0: bars.y + 20,
    x1: bars.x,
    y1: bars.y + 25 + 13 * told.length,
  });
  svg += benchDimension(study, frame, planBox.y1 + 36, units);
  svg += drops(study, plan, frame) + profileDrawing(study, frame, units);
  if (shown.chosen) svg += benchRope(study, shown.chosen, frame);
  return { svg, inset: drawn.inset };
}

const listed = (parts: readonly string[]): string => parts.filter((part) => part !== '').join(', ');
