import type { Study, StudyLayout } from '../study/index.ts';
import { formatDegrees, formatLength, type UnitSystem } from '../units/index.ts';
import { endWords } from './end-words.ts';
import type { Label } from './label-space.ts';
import { nameOf } from './layout-label-texts.ts';
import type { DrawnMark } from './mark-drawing.ts';
import type { PlanFrame } from './plan-frame.ts';

/** What is named along the descent: its end, steps, the governing stretch, its bearing. */
export function descentLabels({ descent, angle }: Study, frame: PlanFrame, units: UnitSystem): Label[] {
  if (!descent) return [];
  const list: Label[] = [];
  const along = (distanceM: number, words: string, pen: Label['pen']): void => {
    const [x, y] = frame.page([distanceM, 0]);
    list.push({ x, y, lines: [words], pen });
  };
  along(descent.horizontalM, endWords[descent.end.why], 'label');
  for (const { distanceM, heightM } of descent.steps) {
    along(distanceM, `step about ${formatLength(heightM, units)}: stop`, 'stop');
  }
  if (angle) {
    const [from, to] = angle.stretchM;
    along((from + to) / 2, `steepest ${formatLength(to - from, units)}, ${formatDegrees(angle.governingDeg)}`, 'label');
  }
  along(descent.horizontalM * 0.6, `descent bears ${formatDegrees(descent.azimuthDeg)}`, 'small');
  return list;
}

/** Ink says how a value is known: measured bold, assumed in italics. */
const penOf = { measured: 'strong', typed: 'label', computed: 'label', assumed: 'assumedLabel' } as const;

/** The edge with how its place is known. */
export function edgeLabels({ edge, origins }: Study, frame: PlanFrame, units: UnitSystem): Label[] {
  if (!edge) return [];
  const how = origins['edge.offsetM']?.how ?? 'computed';
  const words = `edge ${formatLength(Math.abs(edge.offsetM), units)} from the road line, ${how}`;
  return [{ x: frame.edgeX, y: frame.edgeY + 1, lines: [words], pen: penOf[how] }];
}

/** Which line is which below the edge; left out where there is no room. */
export function lineLabels({ descent }: Study, { points }: StudyLayout, frame: PlanFrame): Label[] {
  if (!descent) return [];
  const [belayX, belayY] = frame.at(points.belayAnchor);
  const [x, y] = frame.page([descent.horizontalM * 0.82, 0]);
  const share = 0.6;
  const [endX, endY] = frame.page([descent.horizontalM, 0]);
  return [
    { x, y, lines: ['main'], pen: 'small' },
    { x: belayX + (endX - belayX) * share, y: belayY + (endY - belayY) * share, lines: ['belay'], pen: 'small' },
  ];
}

/** Where the next stage begins, for a layout whose slope is taken in stages. */
export const stageLabels = ({ stages }: StudyLayout, frame: PlanFrame): Label[] =>
  (stages?.[0]?.at ?? []).map(({ distanceM, what }, i) => {
    const [x, y] = frame.page([distanceM, 0]);
    return { x, y, lines: [`stage ${i + 2} from here: ${what}`], pen: 'label' };
  });

/** Names of the marks that stand in the view. */
export const markLabels = (study: Study, drawn: readonly DrawnMark[]): Label[] =>
  drawn.map(({ mark, x, y }) => ({
    ...{ x, y },
    lines: [mark.kind === 'water' && mark.name !== null ? mark.name : nameOf(study, mark.id)],
    pen: mark.kind === 'water' ? 'waterWord' : 'small',
  }));

/** One word at the layout that was not chosen. */
export function otherLabel(chosen: StudyLayout, other: StudyLayout, frame: PlanFrame): Label {
  const [x, y] = frame.at(other.points.anchor);
  const name = other.kind === chosen.kind ? `next ${other.kind} haul` : `${other.kind} haul`;
  return { x, y, lines: [`dashed: ${name}`], pen: 'note' };
}
