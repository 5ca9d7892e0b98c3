import type { Study } from '../study/index.ts';
import { formatDegrees, formatLength, type UnitSystem } from '../units/index.ts';
import { apparatusDrawing, otherApparatus } from './apparatus-drawing.ts';
import { benchDrawing } from './bench-drawing.ts';
import { benchLines } from './bench-lines.ts';
import { boxesAlong } from './boxes.ts';
import { endSign } from './end-sign.ts';
import { endWords } from './end-words.ts';
import { fieldRuler } from './field-ruler.ts';
import { type Label, labelWithLeader } from './label-space.ts';
import { laneDrawing } from './lane-drawing.ts';
import { markDrawing } from './mark-drawing.ts';
import { northArrow } from './north.ts';
import { placeColumn } from './place-column.ts';
import { placeNear } from './place-near.ts';
import type { PlanFrame } from './plan-frame.ts';
import { layoutLabels, nameOf } from './plan-label-texts.ts';
import { roadName } from './road-name.ts';
import { keepOutDrawing, otherLine, ropeDrawing } from './rope-drawing.ts';
import type { ShownLayouts } from './shown-layouts.ts';
import { element, num, pathThrough } from './svg.ts';

/** Space that labels keep from the neat line. */
const INSET = 6;

/**
 * The plan view inside the frame's box: what is measured of the bench, the descent, marks, and the shown layouts to scale,
 * each named where it stands. A place planned as high shows its layouts dashed, for the technical team.
 */
export function planDrawing(
  study: Study,
  { chosen, other }: ShownLayouts,
  frame: PlanFrame,
  units: UnitSystem,
): string {
  const { pens, box } = frame;
  const forTeam = study.angle?.planAs === 'high';
  const bench = benchLines(study, frame);
  const lanes = chosen ? laneDrawing(study, chosen, frame, bench) : { svg: '', middle: null };
  const marks = markDrawing(study, frame);
  const ground = [
    lanes.svg,
    chosen ? keepOutDrawing(chosen, frame) : '',
    benchDrawing(study, frame, bench),
    marks.svg,
    chosen && other ? otherApparatus(study, other, chosen, frame) + otherLine(other, frame) : '',
    chosen ? apparatusDrawing(study, chosen, frame, forTeam) : '',
    descentDrawing(study, frame),
    chosen ? fieldRuler(chosen, frame, units) + ropeDrawing(study, chosen, frame, forTeam) : '',
    signs(study, frame),
  ].join('');
  const north = northArrow(frame);
  const labels = [
    ...column(study, chosen ? layoutLabels(study, chosen, frame, units, lanes.middle, forTeam) : [], frame, units),
    ...near(
      study,
      marks.drawn.map(
        ({ mark, x, y }): Label => ({
          ...{ x, y },
          lines: [mark.kind === 'water' && mark.name ? mark.name : nameOf(study, mark.id)],
          pen: mark.kind === 'water' ? 'waterWord' : 'small',
        }),
      ),
      frame,
      units,
    ),
    ...(chosen && other ? otherLabel(study, chosen, other, frame) : []),
  ];
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
  return view + neat + north + labels.join('') + roadName(study, frame, bench);
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

function column(study: Study, labels: Label[], frame: PlanFrame, units: UnitSystem): string[] {
  const { box, edgeX, edgeY, pens } = frame;
  const all = [...labels];
  if (study.edge) {
    const how = study.origins['edge.offsetM']?.how ?? 'computed';
    all.push({
      x: edgeX,
      y: edgeY + 1,
      lines: [`edge ${formatLength(Math.abs(study.edge.offsetM), units)} from the road line, ${how}`],
      pen: how === 'measured' ? 'strong' : 'label',
    });
  }
  const bounds = { x0: box.x0 + INSET, y0: box.y0 + INSET, x1: box.x1 - INSET, y1: box.y1 - INSET };
  const { placed, left } = placeColumn(all, edgeX + 58, edgeY, bounds, frame.taken);
  const rest = left.flatMap((label) => placeNear(label, bounds, frame.taken) ?? []);
  return [...placed, ...rest].map(({ label, textX, textY }) => labelWithLeader(label, textX, textY, pens));
}

/** Labels that stand beside what they name: bearing, governing stretch, steps, end, marks. */
function near({ descent, angle }: Study, marks: Label[], frame: PlanFrame, units: UnitSystem): string[] {
  const labels: Label[] = [];
  const along = (distanceM: number, words: string, pen: Label['pen']): void => {
    const [x, y] = frame.page([distanceM, 0]);
    labels.push({ x, y, lines: [words], pen });
  };
  if (descent) {
    along(descent.horizontalM, endWords[descent.end.why], 'label');
    for (const { distanceM, heightM } of descent.steps)
      along(distanceM, `step about ${formatLength(heightM, units)}: stop`, 'stop');
    if (angle) {
      const middle = (angle.stretchM[0] + angle.stretchM[1]) / 2;
      along(
        middle,
        `steepest ${formatLength(angle.stretchM[1] - angle.stretchM[0], units)}, ${formatDegrees(angle.governingDeg)}`,
        'label',
      );
    }
    along(descent.horizontalM * 0.35, `descent bears ${formatDegrees(descent.azimuthDeg)}`, 'small');
  }
  const { box } = frame;
  const bounds = { x0: box.x0 + INSET, y0: box.y0 + INSET, x1: box.x1 - INSET, y1: box.y1 - INSET };
  return [...labels, ...marks].flatMap((label) => {
    const found = placeNear(label, bounds, frame.taken);
    return found ? [labelWithLeader(label, found.textX, found.textY, frame.pens)] : [];
  });
}

/** One word at the layout that was not chosen. */
function otherLabel(
  study: Study,
  chosen: NonNullable<ShownLayouts['chosen']>,
  other: NonNullable<ShownLayouts['other']>,
  frame: PlanFrame,
): string[] {
  const spot = study.spots.find(({ id }) => id === other.anchor);
  const [x, y] = frame.at(
    spot && other.anchor !== chosen.anchor && other.anchor !== chosen.turn ? spot : other.points.anchor,
  );
  const { box } = frame;
  const bounds = { x0: box.x0 + INSET, y0: box.y0 + INSET, x1: box.x1 - INSET, y1: box.y1 - INSET };
  const label: Label = { x, y, lines: [`dashed: ${other.kind} haul`], pen: 'note' };
  const found = placeNear(label, bounds, frame.taken);
  return found ? [labelWithLeader(label, found.textX, found.textY, frame.pens)] : [];
}
