import type { Pens } from './pens.ts';
import { element, num } from './svg.ts';

/** The end of the descent at x, y: a circle in quarters, as on the map; radius in drawing units. */
export const endSign = (x: number, y: number, r: number, pens: Pens): string =>
  element('circle', { ...pens.contact, class: 'contact end', cx: x, cy: y, r }) +
  element('path', {
    ...pens.solid,
    d: `M${num(x)} ${num(y)}v-${r}a${r} ${r} 0 0 1 ${r} ${r}zM${num(x)} ${num(y)}v${r}a${r} ${r} 0 0 1 -${r} -${r}z`,
  });
