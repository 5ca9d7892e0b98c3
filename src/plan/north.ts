import { toRadians } from '../units/index.ts';
import { holds } from './boxes.ts';
import { crowding } from './label-space.ts';
import type { PlanFrame } from './plan-frame.ts';
import { element, num, text } from './svg.ts';

const LENGTH = 34;

/** The north arrow in a free corner of the plan; it turns with the plan. */
export function northArrow(frame: PlanFrame): string {
  const { box, pens } = frame;
  const deg = frame.pageDeg(0);
  const [ux, uy] = [Math.cos(toRadians(deg)), Math.sin(toRadians(deg))];
  const reach = LENGTH / 2 + 16;
  const corners: [number, number][] = [
    [box.x1 - reach - 4, box.y0 + reach + 4],
    [box.x1 - reach - 4, box.y1 - reach - 4],
    [box.x1 - 3 * reach, box.y0 + reach + 4],
    [box.x0 + reach + 4, box.y0 + reach + 4],
  ];
  const around = ([x, y]: [number, number]) => ({ x0: x - reach, y0: y - reach, x1: x + reach, y1: y + reach });
  const free = corners.find((corner) => holds(box, around(corner)) && crowding(around(corner), box, frame.taken) === 0);
  const [x, y] = free ?? corners[0];
  frame.taken.push(around([x, y]));
  const tip = [x + (ux * LENGTH) / 2, y + (uy * LENGTH) / 2];
  const tail = [x - (ux * LENGTH) / 2, y - (uy * LENGTH) / 2];
  const half = 4;
  return (
    element('path', {
      ...pens.solid,
      class: 'north solid',
      d: `M${num(tip[0])} ${num(tip[1])}L${num(tail[0] - uy * half)} ${num(tail[1] + ux * half)}L${num(tail[0])} ${num(tail[1])}Z`,
    }) +
    element('path', {
      ...pens.dimension,
      d: `M${num(tip[0])} ${num(tip[1])}L${num(tail[0] + uy * half)} ${num(tail[1] - ux * half)}L${num(tail[0])} ${num(tail[1])}`,
    }) +
    text(tip[0] + ux * 9, tip[1] + uy * 9 + 4, 'N', { ...pens.strong, 'text-anchor': 'middle' })
  );
}
