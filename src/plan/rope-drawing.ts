import type { Study, StudyLayout } from '../study/index.ts';
import { toRadians } from '../units/index.ts';
import { type Box, boundsOf, boxesAlong } from './boxes.ts';
import { hatch } from './hatch.ts';
import type { PlanFrame } from './plan-frame.ts';
import { keepOutRing, spotCorners } from './plan-ground.ts';
import { element, pathThrough } from './svg.ts';

/**
 * The lines of a layout: main from its anchor over the turn and the edge to the end of the descent, belay from its own anchor
 * to the end, the strap that holds the turn, drawn along the resultant, and the hauling end where it turns along the road.
 */
export function ropeDrawing(study: Study, layout: StudyLayout, frame: PlanFrame, forTeam: boolean): string {
  const { pens } = frame;
  const { points } = layout;
  const end = study.descent ? frame.at(study.descent.end) : null;
  const main = [points.anchor, ...(points.turn ? [points.turn] : []), points.edge].flatMap((p) => frame.at(p));
  if (end) main.push(...end);
  const belay = [...frame.at(points.belayAnchor), ...(end ?? frame.at(points.edge))];
  let out = '';
  const strap = strapOf(study, layout, frame);
  if (strap) out += element('path', { ...pens.strap, d: pathThrough(strap) });
  if (points.handTurn) {
    const hand = [...frame.at(points.anchor), ...frame.at(points.handTurn)];
    if (Math.hypot(hand[2] - hand[0], hand[3] - hand[1]) > 1) {
      out += element('path', { ...pens.handLine, d: pathThrough(hand) });
    }
  }
  out += element('path', { ...pens.belay, d: pathThrough(belay) });
  out += element('path', { ...(forTeam ? pens.ropeForTeam : pens.rope), d: pathThrough(main) });
  for (const point of [points.anchor, points.belayAnchor]) {
    const [cx, cy] = frame.at(point);
    out += element('circle', { ...pens.contact, class: 'tie', cx, cy, r: 3.6 });
  }
  if (points.turn) {
    const [cx, cy] = frame.at(points.turn);
    out += element('circle', { ...pens.accentFill, class: 'turn accent-fill', cx, cy, r: 4 });
  }
  frame.taken.push(...boxesAlong(main, 4), ...boxesAlong(belay, 3));
  return out;
}

/** The main line of the layout that was not chosen, thin and dashed, as far as the edge. */
export function otherLine(other: StudyLayout, frame: PlanFrame): string {
  const { points } = other;
  const line = [points.anchor, ...(points.turn ? [points.turn] : []), points.edge].flatMap((p) => frame.at(p));
  return element('path', { ...frame.pens.otherLine, d: pathThrough(line) });
}

/** The keep-out on its own paper: double hatch on the bench, a sparse one down the fall line, dashed border around both. */
export function keepOutDrawing(layout: StudyLayout, frame: PlanFrame): string {
  const { pens } = frame;
  const ring = frame.page(keepOutRing(frame.ground, layout));
  if (ring.length < 6) return '';
  const bench = halfOf(ring, frame.edgeX, -1);
  const fall = halfOf(ring, frame.edgeX, 1);
  frame.taken.push(boundsOf(boxesAlong(fall, 0)), ...insideBoxes(layout, frame));
  return (
    element('path', { ...pens.keepOutGround, d: `${pathThrough(bench)}Z` }) +
    element('path', { ...pens.keepOutHatch, d: hatch(bench, 52, 5) + hatch(bench, -52, 9) }) +
    element('path', { ...pens.keepOutFall, d: hatch(fall, 52, 13) }) +
    element('path', { ...pens.keepOut, d: `${pathThrough(ring)}Z` })
  );
}

/** Nor do words stand inside the turned rope's angle: boxes on rays from the edge to the haul field. */
function insideBoxes({ points }: StudyLayout, frame: PlanFrame): Box[] {
  if (!points.turn) return [];
  const edge = frame.at(points.edge);
  const [tx, ty] = frame.at(points.turn);
  const [ax, ay] = frame.at(points.anchor);
  return Array.from({ length: 11 }, (_value, k) => [tx + ((ax - tx) * k) / 10, ty + ((ay - ty) * k) / 10]).flatMap(
    (to) => boxesAlong([...edge, ...to], 3),
  );
}

/** The part of a ring on one side of an upright line (Sutherland and Hodgman's cut); x, y pairs flat. */
function halfOf(ring: readonly number[], x: number, side: 1 | -1): number[] {
  const kept: number[] = [];
  for (let i = 0; i < ring.length; i += 2) {
    const [ax, ay] = [ring[i], ring[i + 1]];
    const [bx, by] = [ring[(i + 2) % ring.length], ring[(i + 3) % ring.length]];
    const inside = (ax - x) * side >= 0;
    if (inside) kept.push(ax, ay);
    if (inside !== (bx - x) * side >= 0) kept.push(x, ay + ((by - ay) * (x - ax)) / (bx - ax));
  }
  return kept;
}

/** From the turn back against the resultant to the apparatus that holds it; null where the turn is on a tree or rock. */
function strapOf(study: Study, { turn, points, forces }: StudyLayout, frame: PlanFrame): number[] | null {
  const spot = study.spots.find(({ id }) => id === turn);
  if (!spot || !points.turn) return null;
  const outline = frame.page(spotCorners(frame.ground, spot));
  const [x, y] = frame.at(points.turn);
  const toward = forces.find(
    ({ at, towardDeg }) => at.startsWith('change of direction') && towardDeg !== null,
  )?.towardDeg;
  if (toward === undefined || toward === null) return null;
  const deg = toRadians(frame.pageDeg(toward) + 180);
  const hit = firstHit(x, y, Math.cos(deg), Math.sin(deg), outline);
  const [tx, ty] = hit ?? nearestCorner(x, y, outline);
  return [tx, ty, x, y];
}

/** Where a ray first meets a closed outline; null where it misses. */
function firstHit(x: number, y: number, ux: number, uy: number, outline: readonly number[]): [number, number] | null {
  let nearest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < outline.length; i += 2) {
    const [ax, ay] = [outline[i] - x, outline[i + 1] - y];
    const [bx, by] = [outline[(i + 2) % outline.length] - x, outline[(i + 3) % outline.length] - y];
    const side = (bx - ax) * uy - (by - ay) * ux;
    if (side === 0) continue;
    const t = (ay * (bx - ax) - ax * (by - ay)) / side;
    const s = Math.abs(bx - ax) > Math.abs(by - ay) ? (t * ux - ax) / (bx - ax) : (t * uy - ay) / (by - ay);
    if (t >= 0 && s >= 0 && s <= 1) nearest = Math.min(nearest, t);
  }
  return Number.isFinite(nearest) ? [x + ux * nearest, y + uy * nearest] : null;
}

function nearestCorner(x: number, y: number, outline: readonly number[]): [number, number] {
  let best: [number, number] = [outline[0], outline[1]];
  for (let i = 2; i < outline.length; i += 2) {
    if (Math.hypot(outline[i] - x, outline[i + 1] - y) < Math.hypot(best[0] - x, best[1] - y)) {
      best = [outline[i], outline[i + 1]];
    }
  }
  return best;
}
