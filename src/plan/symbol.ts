import type { SymbolPaths } from './mark-paths.ts';
import type { PlanFrame } from './plan-frame.ts';
import { element, num } from './svg.ts';

/** Side of a symbol's box on a plan view, drawing units. */
export const SYMBOL = 22;

/** A field book's symbol with its middle at x, y of a plan view; labels keep clear of it. */
export function symbolAt(
  { line, fine, dash, solid }: SymbolPaths,
  name: string,
  x: number,
  y: number,
  { pens, taken }: PlanFrame,
): string {
  const half = SYMBOL / 2;
  taken.push({ x0: x - half, y0: y - half, x1: x + half, y1: y + half });
  return element(
    'g',
    {
      class: `mark mark-${name.replaceAll(' ', '-')}`,
      transform: `translate(${num(x - half)} ${num(y - half)}) scale(${num(SYMBOL / 24)})`,
    },
    element('path', { ...pens.markLine, d: line }) +
      (fine ? element('path', { ...pens.markFine, d: fine }) : '') +
      (dash ? element('path', { ...pens.markDash, d: dash }) : '') +
      (solid ? element('path', { ...pens.solid, d: solid }) : ''),
  );
}
