import type { Study } from '../study/index.ts';
import { azimuthGap, formatLength, toRadians, type UnitSystem } from '../units/index.ts';
import { benchRope } from './bench-rope.ts';
import type { Pens } from './pens.ts';
import { planDrawing } from './plan-drawing.ts';
import { planExtent } from './plan-extent.ts';
import { type PlanFrame, planFrame } from './plan-frame.ts';
import { planGround } from './plan-ground.ts';
import { profileDrawing } from './profile-drawing.ts';
import { type ProfileFrame, profileFrame, profileSpan } from './profile-frame.ts';
import { scaleBars, scaleBarsBox } from './scale-bars.ts';
import type { ShownLayouts } from './shown-layouts.ts';
import { element, num, pathThrough, text } from './svg.ts';
import { textBlock } from './text-block.ts';
import { textWidth } from './text-width.ts';
import { whyNothing } from './why-nothing.ts';

const MOST_PLAN = 600;
/** Labels need so much height, however small the scale. */
const LEAST_PLAN = 360;
const MOST_PROFILE = 620;
const MOST_SCALE = 14;
/** Between the plan's neat line and the highest ground of the profile. */
const GAP = 74;
/** The edge fan with its words hangs no less deep under the edge. */
const LEAST_FAN = 110;
/** Right of the descent's end, for the drop's dimension. */
const RIGHT = 60;

/** Plan view and profile under it at one scale, their x one axis, joined by dotted drops; heights in drawing units. */
export function drawingPair(
  study: Study,
  shown: ShownLayouts,
  { x, y, width }: { x: number; y: number; width: number },
  units: UnitSystem,
  pens: Pens,
): { svg: string; height: number; scale: number } {
  const why = whyNothing(study);
  const note =
    why && !study.sentence.includes(why)
      ? textBlock(why, { x, y, width }, pens.heading, 'serif')
      : { svg: '', height: 0 };
  if (!study.bench) return { ...note, scale: 1 };
  const top = y + note.height + (note.height > 0 ? 6 : 0);
  const ground = planGround(study);
  const extent = planExtent(study, ground, shown);
  const { profile } = study;
  const behindM = Math.max(extent.behindM, ...(profile?.behind.distanceM.map((d) => -d) ?? []));
  const span = profile ? profileSpan(study) : null;
  const scale = Math.min(
    (width - RIGHT) / (behindM + extent.aheadM),
    MOST_PLAN / (extent.leftM + extent.rightM),
    span ? MOST_PROFILE / Math.max(4, span.topM - span.bottomM) : MOST_SCALE,
    MOST_SCALE,
  );
  const spareM = Math.max(0, LEAST_PLAN / scale - extent.leftM - extent.rightM) / 2;
  const [leftM, rightM] = [extent.leftM + spareM, extent.rightM + spareM];
  const box = { x0: x, y0: top, x1: x + width, y1: top + (leftM + rightM) * scale };
  const edgeX = x + behindM * scale;
  const plan = planFrame(ground, pens, { scale, box, edgeX, edgeY: top + leftM * scale });
  const bars = { x: x + width, y: box.y1 + 14 };
  const drawn = planDrawing(study, shown, plan, units);
  const told = { x: x + width, y: box.y1 + 50 };
  let svg =
    note.svg +
    drawn.svg +
    scaleBars({ ...bars, scale, units, pens }) +
    (drawn.contours === '' ? '' : text(told.x, told.y, drawn.contours, { ...pens.small, 'text-anchor': 'end' }));
  if (!profile || !span || !study.descent) return { svg, scale, height: box.y1 + 44 - y };
  const topY = box.y1 + GAP;
  const edgeDown = (span.topM - (study.edge?.elevationM ?? span.topM)) * scale;
  const bottom = Math.max(
    topY + (span.topM - span.bottomM) * scale + Math.max(34, 4 * scale),
    topY + edgeDown + Math.max(LEAST_FAN, 15 * scale),
  );
  const frame = profileFrame(study, {
    scale,
    edgeX,
    topY,
    pens,
    box: { x0: x, y0: box.y1 + 6, x1: x + width, y1: bottom },
  });
  frame.taken.push(scaleBarsBox(bars), { x0: told.x - 100, y0: told.y - 11, x1: told.x, y1: told.y + 4 });
  svg += benchDimension(study, frame, box.y1 + 32, units);
  svg += drops(study, plan, frame) + profileDrawing(study, frame, units);
  if (shown.chosen) svg += benchRope(study, shown.chosen, frame);
  return { svg, scale, height: bottom - y };
}

/** Dotted drops from the plan to the profile at the edge, every contact and the end. */
export function drops({ descent, edge, profile }: Study, plan: PlanFrame, frame: ProfileFrame): string {
  if (!descent || !edge || !profile) return '';
  const heightAt = (distanceM: number): number => {
    const i = profile.distanceM.findIndex((d) => d >= distanceM);
    return profile.elevationM[i < 0 ? profile.elevationM.length - 1 : i];
  };
  const at = [0, ...descent.contacts.map(({ distanceM }) => Math.max(0, distanceM)), descent.horizontalM];
  const d = [...new Set(at)].map((m) => {
    const px = num(frame.px(m));
    return `M${px} ${num(plan.edgeY)}V${num(frame.py(heightAt(m)))}`;
  });
  return element('path', { ...frame.pens.project, d: d.join('') });
}

/** The road bench as the descent crosses it, dimensioned over the profile. */
export function benchDimension(
  { bench, descent, site }: Study,
  frame: ProfileFrame,
  y: number,
  units: UnitSystem,
): string {
  if (!bench || bench.widthM === null || !descent) return '';
  const slant = azimuthGap(descent.azimuthDeg, site.sideAzimuthDeg);
  if (slant > 60) return '';
  const acrossM = bench.widthM / Math.cos(toRadians(slant));
  const [x0, x1] = [frame.px(-acrossM), frame.px(0)];
  const words = `road bench ${formatLength(bench.widthM, units, 'down')}`;
  // Where the bench is narrow on the page its words begin at the margin.
  const wordsX = Math.max(x1, frame.box.x0 + textWidth([words], 12));
  frame.taken.push({ x0: Math.min(x0, wordsX - textWidth([words], 12)) - 4, y0: y - 18, x1: wordsX + 6, y1: y + 6 });
  return (
    element('path', {
      ...frame.pens.dimension,
      class: 'bench-width dimline',
      d: `${pathThrough([x0, y, x1, y])}M${num(x0)} ${num(y - 4)}v8M${num(x1)} ${num(y - 4)}v8`,
    }) + text(wordsX, y - 6, words, { ...frame.pens.label, 'text-anchor': 'end' })
  );
}
