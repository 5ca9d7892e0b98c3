import type { Study, StudyLayout } from '../study/index.ts';
import { formatDegrees, formatLength, type UnitSystem } from '../units/index.ts';
import { forceWords } from './force-words.ts';
import type { Label } from './label-space.ts';
import type { PlanFrame } from './plan-frame.ts';
import { keepOutRing, spotCorners } from './plan-ground.ts';

/** What is named beside the bench of a chosen layout, each at the point it names. */
export function layoutLabels(
  study: Study,
  layout: StudyLayout,
  frame: PlanFrame,
  units: UnitSystem,
  laneMiddle: [number, number] | null,
  forTeam: boolean,
): Label[] {
  const { points, turn, anchor, lines } = layout;
  const list: Label[] = [];
  const add = (at: readonly [number, number], words: string, pen: Label['pen'] = 'label'): void => {
    list.push({ x: at[0], y: at[1], lines: [words], pen });
  };
  const forces = (place: string): string => {
    const words = forTeam || frame.brief ? null : forceWords(layout, place, units);
    return words ? `: ${words}` : '';
  };
  add(frame.at(points.anchor), `anchor, ${nameOf(study, anchor)}${forces('main anchor')}`);
  if (points.turn && turn) {
    const angle = layout.turnAngleDeg === null ? '' : `, ${formatDegrees(layout.turnAngleDeg)} between the legs`;
    add(frame.at(points.turn), `turn, ${nameOf(study, turn)}${angle}${forces('change of direction')}`);
  }
  add(frame.at(points.belayAnchor), `${belayWords(study, layout)}${forces('belay anchor')}`);
  if (points.handTurn && lines.hand) {
    const at = frame.at(points.handTurn);
    const main = frame.at(points.anchor);
    if (Math.hypot(at[0] - main[0], at[1] - main[1]) > 12) add(at, `hauling end turned along the road`);
  }
  const inside = insideOf(layout, frame);
  if (inside) add(inside, 'keep out: inside the turned rope', 'accentLabel');
  if (laneMiddle) add(laneMiddle, laneWords(study, layout));
  for (const id of new Set([turn, anchor])) {
    const spot = study.spots.find((candidate) => candidate.id === id);
    if (!spot || spot.edgeClearanceM === null || forTeam || frame.brief) continue;
    add(
      outerSide(frame, spotCorners(frame.ground, spot)),
      `${spot.apparatus}: outer wheels ${formatLength(spot.edgeClearanceM, units, 'down')} from the edge`,
    );
  }
  if (forTeam) {
    const spot = study.spots.find(({ id }) => id === turn || id === anchor);
    if (spot) add(frame.at(spot), 'spots dashed: for the technical team');
  }
  return list;
}

/** Up to so many letters a mark's name is a sign like T3 and stands right behind its kind. */
const SHORT_NAME = 4;

/** An apparatus or a marked tree or rock by its name. */
export function nameOf({ spots, marks }: Study, id: string): string {
  const spot = spots.find((candidate) => candidate.id === id);
  if (spot) return spot.apparatus;
  const mark = marks.find((candidate) => candidate.id === id);
  if (!mark) return id;
  if (mark.name === null) return mark.kind;
  if (mark.name.includes(mark.kind)) return mark.name;
  return mark.name.length <= SHORT_NAME ? `${mark.kind} ${mark.name}` : `${mark.kind}, ${mark.name}`;
}

function belayWords(study: Study, { lines, anchor, turn }: StudyLayout): string {
  const { anchor: belay, sharesAnchorWith } = lines.belay;
  const name = nameOf(study, belay);
  if (sharesAnchorWith !== null)
    return `belay, ${name}, shares the anchor of the ${sharesAnchorWith === turn ? 'turn' : 'main line'}`;
  if (belay === turn || belay === anchor) return `belay on its own point of ${name}`;
  return `belay on its own anchor, ${name}`;
}

function laneWords({ bench, closure }: Study, { lanesBlocked }: StudyLayout): string {
  const lanes = bench?.carriageway.lanes ?? 1;
  if (lanesBlocked >= lanes || (closure?.kind === 'road closed' && lanesBlocked === closure.lanesBlocked))
    return 'road closed';
  return `${lanesBlocked} of ${lanes} lanes closed`;
}

/** A point inside the turned rope's angle; null in a straight haul. */
function insideOf(layout: StudyLayout, frame: PlanFrame): [number, number] | null {
  if (!layout.points.turn || keepOutRing(frame.ground, layout).length === 0) return null;
  const [ax, ay] = frame.at(layout.points.anchor);
  const [tx, ty] = frame.at(layout.points.turn);
  const [ex, ey] = frame.at(layout.points.edge);
  return [(ax + tx + 2 * ex) / 4, (ay + ty + 2 * ey) / 4];
}

/** Middle of the outline's side nearest to the drop. */
function outerSide(frame: PlanFrame, corners: readonly number[]): [number, number] {
  const page = frame.page(corners);
  let best: [number, number] = [page[0], page[1]];
  for (let i = 0; i < 8; i += 2) {
    const x = (page[i] + page[(i + 2) % 8]) / 2;
    if (x > best[0] || i === 0) best = [x, (page[i + 1] + page[(i + 3) % 8]) / 2];
  }
  return best;
}
