import { FOOT_M, type UnitSystem } from '../units/index.ts';
import type { Box } from './boxes.ts';
import type { Pens } from './pens.ts';
import { element, text } from './svg.ts';

/** A round length whose bar is between 80 and 200 drawing units. */
function roundLength(unitPx: number): number {
  for (const length of [10, 20, 50, 100, 200, 500, 1000]) if (length * unitPx >= 80) return length;
  return 1000;
}

interface Place {
  /** Right end of the block and its first bar's height. */
  readonly x: number;
  readonly y: number;
  readonly scale: number;
  readonly units: UnitSystem;
  readonly pens: Pens;
}

/** Box that the two bars take, drawing units. */
export const scaleBarsBox = ({ x, y }: Pick<Place, 'x' | 'y'>): Box => ({ x0: x - 262, y0: y - 8, x1: x, y1: y + 26 });

/** Two scale bars, feet and metres, the reader's unit first. */
export function scaleBars({ x, y, scale, units, pens }: Place): string {
  const systems: [string, number][] = [
    ['ft', FOOT_M],
    ['m', 1],
  ];
  if (units === 'metric') systems.reverse();
  let out = '';
  systems.forEach(([unit, metres], row) => {
    const unitPx = metres * scale;
    const length = roundLength(unitPx);
    const barWidth = length * unitPx;
    const left = x - 40 - barWidth;
    const top = y + row * 16;
    out += element('rect', { ...pens.hollow, x: left, y: top, width: barWidth, height: 3.5 });
    out += element('rect', { ...pens.solid, x: left, y: top, width: barWidth / 2, height: 3.5 });
    out += text(left - 5, top + 6, '0', { ...pens.small, 'text-anchor': 'end' });
    out += text(left + barWidth + 5, top + 6, `${length} ${unit}`, pens.small);
  });
  return out;
}
