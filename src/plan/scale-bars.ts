import { FOOT_M, type UnitSystem } from '../units/index.ts';
import { pens } from './pens.ts';
import type { ProfileFrame } from './profile-frame.ts';
import { element, text } from './svg.ts';

/** A round length whose bar is between 80 and 200 drawing units. */
function roundLength(unitPx: number): number {
  for (const length of [10, 20, 50, 100, 200, 500, 1000]) if (length * unitPx >= 80) return length;
  return 1000;
}

/** Two scale bars at the upper right, feet and metres, the reader's unit first; "one scale both ways" stands beside. */
export function scaleBars(frame: ProfileFrame, units: UnitSystem): string {
  const systems: [string, number][] = [
    ['ft', FOOT_M],
    ['m', 1],
  ];
  if (units === 'metric') systems.reverse();
  let out = '';
  systems.forEach(([unit, metres], row) => {
    const unitPx = metres * frame.scale;
    const length = roundLength(unitPx);
    const barWidth = length * unitPx;
    const x = frame.width - 40 - barWidth;
    const y = 14 + row * 16;
    const half = barWidth / 2;
    out += element('rect', { ...pens.hollow, x, y, width: barWidth, height: 3.5 });
    out += element('rect', { ...pens.solid, x, y, width: half, height: 3.5 });
    out += text(x - 5, y + 6, '0', { ...pens.small, 'text-anchor': 'end' });
    out += text(x + barWidth + 5, y + 6, `${length} ${unit}`, pens.small);
  });
  return out;
}
