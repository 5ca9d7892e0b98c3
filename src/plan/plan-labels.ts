import type { Study } from '../study/index.ts';
import type { UnitSystem } from '../units/index.ts';
import { descentLabels, edgeLabels, lineLabels, markLabels, otherLabel, stageLabels } from './ground-label-texts.ts';
import { type Label, labelWithLeader, type Placed } from './label-space.ts';
import type { LaneDrawing } from './lane-drawing.ts';
import { layoutLabels } from './layout-label-texts.ts';
import type { DrawnMark } from './mark-drawing.ts';
import { placeColumn } from './place-column.ts';
import { placeNear, placeSurely } from './place-near.ts';
import type { PlanFrame } from './plan-frame.ts';
import type { ShownLayouts } from './shown-layouts.ts';
import { advance } from './text-width.ts';
import { wrap } from './wrap.ts';

/** Space that labels keep from the neat line. */
const INSET = 6;
/** Labels beside the bench are broken into lines no narrower than this. */
const LEAST_COLUMN = 150;

/** The name of a line stands close to it or not at all. */
const CLOSE = 30;

/** What the drawing found that labels belong to. */
interface Drawn {
  readonly lanes: LaneDrawing;
  readonly marks: readonly DrawnMark[];
  /** What the surveyed places inside the view are called. */
  readonly places: readonly Label[];
  /** The haul field's label where it found no room along its ruler. */
  readonly field: Label | null;
}

/**
 * All labels of a plan view, placed clear of its ink and of one another: along the descent first, then beside the bench, then
 * marks. Marks and the other layout are left unnamed where there is no room; nothing else is.
 */
export function planLabels(
  study: Study,
  { chosen, other }: ShownLayouts,
  frame: PlanFrame,
  units: UnitSystem,
  drawn: Drawn,
): string {
  const { box } = frame;
  const space = {
    bounds: { x0: box.x0 + INSET, y0: box.y0 + INSET, x1: box.x1 - INSET, y1: box.y1 - INSET },
    taken: frame.taken,
    words: frame.words,
  };
  const near = (labels: readonly Label[]): Placed[] => labels.flatMap((label) => placeNear(label, space) ?? []);
  const stages = chosen ? stageLabels(chosen, frame) : [];
  const onDescent = [...descentLabels(study, frame, units), ...stages].map((label) => placeSurely(label, space));
  // A line's name first: it can stand anywhere along it, but not where another label covers its point.
  const named = markLabels(study, drawn.marks);
  const waters = near(named.filter(({ pen }) => pen === 'waterWord'));
  const beside = [
    ...(chosen ? layoutLabels(study, chosen, frame, units, drawn.lanes.middle, study.angle?.planAs === 'high') : []),
    ...(drawn.field ? [drawn.field] : []),
    ...edgeLabels(study, frame, units),
  ];
  const columnX = frame.edgeX + 58;
  const room = Math.max(LEAST_COLUMN, space.bounds.x1 - columnX - 8);
  const column = beside.map((label) => ({
    ...label,
    lines: label.lines.flatMap((words) => wrap(words, room, advance(12, 'sans'))),
  }));
  const { placed, left } = placeColumn(column, columnX, frame.edgeY, space);
  const sure = left.map((label) => placeSurely(label, space));
  const rest = near([
    ...drawn.places,
    ...named.filter(({ pen }) => pen !== 'waterWord'),
    ...(chosen && other ? [otherLabel(chosen, other, frame)] : []),
  ]);
  const lines = (chosen ? lineLabels(study, chosen, frame) : []).flatMap(
    (label) => placeNear(label, space, CLOSE) ?? [],
  );
  return [...onDescent, ...waters, ...placed, ...sure, ...rest, ...lines]
    .map((each) => labelWithLeader(each, frame.pens))
    .join('');
}
