import type { StudyAngle } from '../study/index.ts';
import { toRadians } from '../units/index.ts';
import type { ProfileFrame } from './profile-frame.ts';
import { element, num, pathThrough } from './svg.ts';

const RADIUS_M = 5.2;
const SMALLEST = 34;

/**
 * The small protractor on the upper end of the governing stretch, where the class is read: ticks each 5°, the rule's rays,
 * the 5–95 % range as a heavy arc and the stretch itself as a bar.
 */
export function readingProtractor(frame: ProfileFrame, angle: StudyAngle, heightAt: (m: number) => number): string {
  const { pens } = frame;
  const [from, to] = angle.stretchM;
  const x = frame.px(from);
  const y = frame.py(heightAt(from));
  const radius = Math.max(SMALLEST, RADIUS_M * frame.scale);
  const point = (deg: number, r: number): [number, number] => [
    x + Math.cos(toRadians(deg)) * r,
    y + Math.sin(toRadians(deg)) * r,
  ];
  const arc = (a: number, b: number, r: number): string => {
    const [x0, y0] = point(a, r);
    const [x1, y1] = point(b, r);
    return `M${num(x0)} ${num(y0)}A${num(r)} ${num(r)} 0 0 1 ${num(x1)} ${num(y1)}`;
  };
  frame.taken.push({ x0: x, y0: y - 3, x1: x + radius + 6, y1: y + radius });
  let out = element('path', { ...pens.levelRay, d: pathThrough([x, y, ...point(0, radius + 6)]) });
  out += element('path', { ...pens.arc, d: arc(0, 75, radius) });
  for (let deg = 0; deg <= 75; deg += 5) {
    out += element('path', {
      ...pens.arc,
      d: pathThrough([...point(deg, radius), ...point(deg, radius + (deg % 10 === 0 ? 5 : 3))]),
    });
  }
  for (const limit of [angle.rule.lowMaxDeg, angle.rule.highMinDeg]) {
    out += element('path', { ...pens.fineRay, d: pathThrough([x, y, ...point(limit, radius + 8)]) });
  }
  out += element('path', {
    ...pens.range,
    d: arc(angle.rangeDeg[0], Math.max(angle.rangeDeg[1], angle.rangeDeg[0] + 0.2), radius - 4),
  });
  out += element('path', { ...pens.stretch, d: pathThrough([x, y, frame.px(to), frame.py(heightAt(to))]) });
  return out;
}
