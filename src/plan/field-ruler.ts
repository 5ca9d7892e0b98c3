import type { StudyLayout } from '../study/index.ts';
import { FOOT_M, formatLength, type UnitSystem } from '../units/index.ts';
import { upright } from './apparatus-drawing.ts';
import { boxesAlong } from './boxes.ts';
import { clearancesOf } from './clearances.ts';
import { crowding, type Label } from './label-space.ts';
import type { Pens } from './pens.ts';
import type { PlanFrame } from './plan-frame.ts';
import { fieldEnds } from './plan-ground.ts';
import { element, num, pathThrough, text } from './svg.ts';
import { textWidth } from './text-width.ts';

const WIDE = 6;
/** The ruler lies this far beside its rope, drawing units. */
const ASIDE = 13;

/**
 * A haul field as a ruler from x, y along a direction: its length to scale, solid at both clearances, a tick each 10 ft or 5 m.
 */
export function ruler(
  { x, y, deg, scale }: { x: number; y: number; deg: number; scale: number },
  layout: StudyLayout,
  units: UnitSystem,
  pens: Pens,
): string {
  const length = layout.haulFieldM * scale;
  const { nearM, anchorM } = clearancesOf(layout);
  const near = Math.min(length, nearM * scale);
  const far = Math.min(length - near, anchorM * scale);
  const step = (units === 'us' ? 10 * FOOT_M : 5) * scale;
  let ticks = '';
  for (let at = step; at < length - far; at += step) if (at > near) ticks += `M${num(at)} 0v${WIDE / 2}`;
  return element(
    'g',
    { class: 'field-ruler', transform: `translate(${num(x)} ${num(y)}) rotate(${num(deg)})` },
    element('rect', { ...pens.hollow, class: 'haul-field hollow', x: 0, y: 0, width: length, height: WIDE }) +
      element('rect', { ...pens.solid, x: 0, y: 0, width: near, height: WIDE }) +
      element('rect', { ...pens.solid, x: length - far, y: 0, width: far, height: WIDE }) +
      (ticks === '' ? '' : element('path', { ...pens.dimension, d: ticks })),
  );
}

/** The haul field beside its rope on the plan, on the hand away from the edge, with its length along it, or its label where that has no room. */
export function fieldRuler(
  layout: StudyLayout,
  frame: PlanFrame,
  units: UnitSystem,
): { svg: string; label: Label | null } {
  const [from, to] = fieldEnds(layout).map((end) => frame.at(end));
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length < 1) return { svg: '', label: null };
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  // On the right hand of the way from turn to anchor lies (−uy, ux); take the hand that leads away from the drop.
  const hand = layout.kind === 'turned' && uy < 0 ? -1 : 1;
  const [nx, ny] = [-uy * hand, ux * hand];
  const off = hand === 1 ? ASIDE - WIDE / 2 : ASIDE + WIDE / 2;
  const x = from[0] + nx * off;
  const y = from[1] + ny * off;
  const deg = (Math.atan2(uy, ux) * 180) / Math.PI;
  const spine = [from[0] + nx * ASIDE, from[1] + ny * ASIDE, to[0] + nx * ASIDE, to[1] + ny * ASIDE];
  frame.taken.push(...boxesAlong(spine, WIDE / 2 + 1));
  let out = ruler({ x, y, deg, scale: frame.scale }, layout, units, frame.pens);
  const words = `haul field ${formatLength(layout.haulFieldM, units, 'down')}`;
  const beside = ASIDE + WIDE / 2 + 10;
  const [mx, my] = [(from[0] + to[0]) / 2 + nx * beside, (from[1] + to[1]) / 2 + ny * beside];
  const half = textWidth([words], 12) / 2;
  const boxes = boxesAlong([mx - ux * half, my - uy * half, mx + ux * half, my + uy * half], 8);
  // The rope's own field, thin, so that ruler and rope read as one.
  out += element('path', {
    ...frame.pens.dimension,
    d: pathThrough([...from, spine[0], spine[1]]) + pathThrough([...to, spine[2], spine[3]]),
  });
  if (boxes.some((each) => crowding(each, frame.box, frame.words) > 0)) {
    return { svg: out, label: { x: spine[0], y: spine[1], lines: [words], pen: 'strong' } };
  }
  frame.taken.push(...boxes);
  frame.words.push(...boxes);
  out += text(mx, my + 4, words, {
    ...frame.pens.strong,
    'text-anchor': 'middle',
    transform: `rotate(${num(upright(deg))} ${num(mx)} ${num(my)})`,
  });
  return { svg: out, label: null };
}
