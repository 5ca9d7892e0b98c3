import type { Pens } from './pens.ts';
import { element, num } from './svg.ts';

/** A whole drawing: paper and content under a title that screen readers say. */
export const sheet = (
  { width, height, pens, name, title }: { width: number; height: number; pens: Pens; name: string; title: string },
  children: string,
): string =>
  element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${num(width)} ${num(height)}`,
      class: name,
      role: 'img',
      'aria-label': title,
    },
    element('rect', { ...pens.paper, x: 0, y: 0, width, height }) + children,
  );
