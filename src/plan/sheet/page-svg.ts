import { element, num } from '../svg.ts';
import type { Paper } from './paper.ts';

/** One page as SVG at its true size. */
export const pageSvg = (paper: Paper, title: string, name: string, children: string): string =>
  element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${paper.widthMm}mm`,
      height: `${paper.heightMm}mm`,
      viewBox: `0 0 ${num(paper.width)} ${num(paper.height)}`,
      class: name,
      role: 'img',
      'aria-label': title,
    },
    element('rect', { fill: '#ffffff', x: 0, y: 0, width: paper.width, height: paper.height }) + children,
  );
