import type { Study } from '../study/index.ts';
import { formatLength, type UnitSystem } from '../units/index.ts';
import { boxesAlong } from './boxes.ts';
import type { Pens } from './pens.ts';
import type { ProfileFrame } from './profile-frame.ts';
import { element, num, text } from './svg.ts';
import { textWidth } from './text-width.ts';

/** The edge attendant, 1.7 m tall and to scale, no smaller than 8 units so that the eye still finds it. */
export function attendantAtEdge(x: number, y: number, scale: number, pens: Pens): string {
  const tall = Math.max(8, 1.7 * scale);
  const head = tall * 0.1;
  const shoulder = y - tall * 0.78;
  const hip = y - tall * 0.45;
  return (
    element('path', {
      ...pens.figure,
      d: `M${num(x)} ${num(shoulder)}V${num(hip)}L${num(x - tall * 0.14)} ${num(y)}M${num(x)} ${num(hip)}L${num(x + tall * 0.14)} ${num(y)}`,
    }) + element('circle', { ...pens.solid, class: 'figure head', cx: x, cy: y - tall * 0.88, r: head })
  );
}

/** The drop, dimensioned at the right end of the drawing. */
export function dropDimension({ edge, descent }: Study, frame: ProfileFrame, units: UnitSystem): string {
  if (!edge || !descent) return '';
  const x = frame.dimensionX;
  const y0 = frame.py(edge.elevationM);
  const y1 = frame.py(descent.end.elevationM);
  const words = `drop ${formatLength(descent.dropM, units)}`;
  const middle = (y0 + y1) / 2;
  const half = textWidth([words], 12) / 2;
  frame.taken.push(...boxesAlong([x, y0, x, y1], 4), ...boxesAlong([x + 8, middle - half, x + 8, middle + half], 7));
  return (
    element('path', {
      ...frame.pens.dimension,
      d: `M${num(x - 4)} ${num(y0)}h8M${num(x)} ${num(y0)}V${num(y1)}M${num(x - 4)} ${num(y1)}h8`,
    }) +
    text(x + 5, middle, words, {
      ...frame.pens.label,
      'text-anchor': 'middle',
      transform: `rotate(90 ${num(x + 5)} ${num(middle)})`,
    })
  );
}
