import type { Study } from '../../study/index.ts';
import { ringPaths, ringRadius } from '../ring-paths.ts';
import { element, num, text } from '../svg.ts';
import { lineOf } from './flow.ts';
import { sheetPens } from './sheet-pens.ts';

/** The class as a ring cut by the ground at its own slope, its word under it; from x, y at a width, drawing units. */
export function classRing({ angle }: Study, x: number, y: number, width: number): string {
  const look = angle?.class ?? null;
  const { ground, fill, hatch } = ringPaths(look);
  const broken = look === 'undecided' ? { 'stroke-dasharray': '2.4 1.7' } : {};
  const scale = width / 24;
  const shape =
    element('circle', { ...lineOf(1.6), cx: 12, cy: 12, r: ringRadius }) +
    (fill === '' ? '' : element('path', { fill: look === 'high' ? '#000000' : '#ffffff', stroke: 'none', d: fill })) +
    (hatch === '' ? '' : element('path', { ...lineOf(0.9), d: hatch })) +
    (ground === '' ? '' : element('path', { ...lineOf(1.6), ...broken, d: ground })) +
    (look === null ? '' : element('circle', { ...lineOf(1.6), cx: 12, cy: 12, r: ringRadius }));
  return (
    element('g', { class: 'class-ring', transform: `translate(${num(x)} ${num(y)}) scale(${num(scale)})` }, shape) +
    text(x + width / 2, y + width + 9, angle?.planAs ?? 'no class', { ...sheetPens.number, 'text-anchor': 'middle' })
  );
}
