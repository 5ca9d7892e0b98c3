import type { Study } from '../study/index.ts';
import { upright } from './apparatus-drawing.ts';
import type { BenchLines } from './bench-lines.ts';
import { boxesAlong, holds } from './boxes.ts';
import { crowding } from './label-space.ts';
import type { PlanFrame } from './plan-frame.ts';
import { num, text } from './svg.ts';
import { textWidth } from './text-width.ts';

/** The road's name along the road where the way is free, off the blocked stretch if it can; nothing where all is taken. */
export function roadName(
  study: Study,
  frame: PlanFrame,
  bench: BenchLines,
  blocked: readonly [number, number] | null,
): string {
  const name = study.site.road.name;
  if (name === null || bench.stations.length < 2) return '';
  const half = textWidth([name], 13) / 2;
  const inBlocked = (i: number): number => (blocked && i >= blocked[0] && i <= blocked[1] ? 1 : 0);
  const order = bench.stations.map((_station, i) => i).sort((a, b) => inBlocked(a) - inBlocked(b) || a - b);
  for (const i of order) {
    for (const aside of [0, -2, 2]) {
      const station = bench.stations[i];
      const [x, y] = bench.point(i, station.lineShiftM + aside);
      const deg = upright(frame.pageDeg(station.azimuthDeg));
      const [ux, uy] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
      const boxes = boxesAlong([x - ux * half, y - uy * half, x + ux * half, y + uy * half], 7);
      if (!boxes.every((box) => holds(frame.box, box) && crowding(box, frame.box, frame.taken) === 0)) continue;
      frame.taken.push(...boxes);
      return text(x, y + 4, name, {
        ...frame.pens.word,
        'text-anchor': 'middle',
        transform: `rotate(${num(deg)} ${num(x)} ${num(y)})`,
      });
    }
  }
  return '';
}
