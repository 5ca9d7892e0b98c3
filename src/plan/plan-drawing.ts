import type { Study, StudyLayout } from '../study/index.ts';
import type { UnitSystem } from '../units/index.ts';
import { apparatusDrawing, otherApparatus } from './apparatus-drawing.ts';
import { benchDrawing } from './bench-drawing.ts';
import { benchLines } from './bench-lines.ts';
import { boxesAlong } from './boxes.ts';
import { contourDrawing, contourHeights } from './contour-drawing.ts';
import { endSign } from './end-sign.ts';
import { fieldRuler } from './field-ruler.ts';
import { insetCorner, type PlanInset } from './inset-corner.ts';
import { laneDrawing, NO_LANE } from './lane-drawing.ts';
import { markDrawing } from './mark-drawing.ts';
import { northArrow } from './north.ts';
import { placeDrawing } from './place-drawing.ts';
import type { ShownPlace } from './place-words.ts';
import type { PlanFrame } from './plan-frame.ts';
import { planLabels } from './plan-labels.ts';
import { roadName } from './road-name.ts';
import { keepOutDrawing, otherLine, ropeDrawing } from './rope-drawing.ts';
import type { ShownLayouts } from './shown-layouts.ts';
import { element, num, pathThrough } from './svg.ts';

/** What else stands in a plan view. */
interface PlanExtras {
  /** Places surveyed around the site, drawn where they lie inside. */
  readonly places?: readonly ShownPlace[];
  /** A small map for a free corner. */
  readonly inset?: PlanInset;
}

interface PlanDrawing {
  readonly svg: string;
  /** "contours 5 ft"; empty where there are none. */
  readonly contours: string;
  /** Whether the inset found a corner. */
  readonly inset: boolean;
}

/**
 * The plan view inside the frame's box: what is measured of the bench, the descent, marks, and the shown layouts to scale,
 * each named where it stands, on contours. A place planned as high shows its layouts dashed, for the technical team.
 */
export function planDrawing(
  study: Study,
  shown: ShownLayouts,
  frame: PlanFrame,
  units: UnitSystem,
  { places = [], inset }: PlanExtras = {},
): PlanDrawing {
  const { chosen, other } = shown;
  const { pens, box } = frame;
  const forTeam = study.angle?.planAs === 'high';
  const bench = benchLines(study, frame);
  const lanes = chosen ? laneDrawing(study, chosen, frame, bench) : NO_LANE;
  const marks = markDrawing(study, frame);
  const around = placeDrawing(places, frame, units);
  const apparatus = chosen ? apparatusDrawing(study, chosen, frame, forTeam) : '';
  const field = chosen ? fieldRuler(chosen, frame, units) : { svg: '', label: null };
  const contours = contourDrawing(study, frame, bench, units);
  const ground = [
    contours.svg,
    lanes.svg,
    chosen ? keepOutDrawing(chosen, frame) : '',
    benchDrawing(study, frame, bench),
    marks.svg,
    around.svg,
    chosen && other ? otherApparatus(study, other, chosen, frame) + otherLine(other, frame) : '',
    apparatus,
    descentDrawing(study, frame),
    chosen ? field.svg + ropeDrawing(study, chosen, frame, forTeam) : '',
    signs(study, frame),
    chosen ? stageTicks(chosen, frame) : '',
  ].join('');
  const corner = inset ? insetCorner(frame, inset) : null;
  const north = northArrow(frame);
  const drawn = { lanes, marks: marks.drawn, places: around.labels, field: field.label };
  const labels = planLabels(study, shown, frame, units, drawn);
  // A nested viewport cuts what runs off the view, without a name that two drawings on one page could share.
  const view = element(
    'svg',
    {
      ...{ x: box.x0, y: box.y0, width: box.x1 - box.x0, height: box.y1 - box.y0 },
      viewBox: `${num(box.x0)} ${num(box.y0)} ${num(box.x1 - box.x0)} ${num(box.y1 - box.y0)}`,
      overflow: 'hidden',
    },
    ground,
  );
  const neat = element('rect', {
    ...{ ...pens.neatLine, x: box.x0, y: box.y0, width: box.x1 - box.x0, height: box.y1 - box.y0 },
  });
  const names = labels + roadName(study, frame, bench, lanes.span);
  return {
    svg: view + neat + (corner && inset ? inset.draw(corner) : '') + north + names + contourHeights(contours, frame),
    contours: contours.words,
    inset: corner !== null,
  };
}

/** The descent with its governing stretch. */
function descentDrawing({ descent, angle }: Study, frame: PlanFrame): string {
  if (!descent) return '';
  const { pens } = frame;
  const line = frame.page([0, 0, descent.horizontalM, 0]);
  frame.taken.push(...boxesAlong(line, 5));
  let out = element('path', { ...pens.dimension, class: 'descent', d: pathThrough(line) });
  if (angle)
    out += element('path', {
      ...pens.stretch,
      d: pathThrough(frame.page([angle.stretchM[0], 0, angle.stretchM[1], 0])),
    });
  return out;
}

/** Rings at the edge and at every contact on the descent, the quartered end, steps across. */
function signs({ descent, edge }: Study, frame: PlanFrame): string {
  if (!descent || !edge) return '';
  const { pens } = frame;
  let out = '';
  for (const { distanceM } of descent.contacts) {
    const [cx, cy] = frame.page([Math.max(0, distanceM), 0]);
    out += element('circle', { ...pens.contact, cx, cy, r: 3.6 });
  }
  for (const { distanceM } of descent.steps) {
    const [x, y] = frame.page([distanceM, 0]);
    out += element('path', {
      ...pens.markLine,
      class: 'step',
      d: `M${num(x)} ${num(y - 9)}v18M${num(x + 3)} ${num(y - 9)}v18`,
    });
  }
  const [cx, cy] = frame.page([0, 0]);
  out += element('circle', { ...pens.contact, class: 'contact edge-dot', cx, cy, r: 3 });
  const [ex, ey] = frame.page([descent.horizontalM, 0]);
  frame.taken.push({ x0: ex - 9, y0: ey - 9, x1: ex + 9, y1: ey + 9 });
  return out + endSign(ex, ey, 7.5, pens);
}

/** A tick across the descent at the first ground of every further stage. */
function stageTicks({ stages }: StudyLayout, frame: PlanFrame): string {
  const d = (stages?.[0]?.at ?? []).map(({ distanceM }) => {
    const [x, y] = frame.page([distanceM, 0]);
    return `M${num(x)} ${num(y - 9)}v18`;
  });
  return d.length === 0 ? '' : element('path', { ...frame.pens.tick, class: 'stage', d: d.join('') });
}
