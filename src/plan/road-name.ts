import type { Study } from '../study/index.ts';
import { upright } from './apparatus-drawing.ts';
import type { BenchLines } from './bench-lines.ts';
import { boxesAlong, holds } from './boxes.ts';
import { crowding } from './label-space.ts';
import type { PlanFrame } from './plan-frame.ts';
import { num, text } from './svg.ts';
import { textWidth } from './text-width.ts';

/** The road's name along the road where the way is free, or nothing where it is not. */
export function roadName(study: Study, frame: PlanFrame, bench: BenchLines): string {
  const name = study.site.road.name;
  if (name === null || bench.stations.length < 2) return '';
  const half = textWidth([name], 13) / 2;
  for (let i = 0; i < bench.stations.length; i += 2) {
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
