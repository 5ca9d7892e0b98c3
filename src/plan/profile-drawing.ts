import type { Study } from '../study/index.ts';
import { toDegrees, type UnitSystem } from '../units/index.ts';
import { boxesAlong } from './boxes.ts';
import { endSign } from './end-sign.ts';
import { edgeFan } from './fan.ts';
import { labelWithLeader } from './label-space.ts';
import { placeOnSlope } from './place-on-slope.ts';
import type { ProfileFrame } from './profile-frame.ts';
import { profileLabels } from './profile-labels.ts';
import { attendantAtEdge, dropDimension } from './profile-signs.ts';
import { readingProtractor } from './protractor.ts';
import { element, num, pathThrough } from './svg.ts';
import { advance } from './text-width.ts';
import { wrap } from './wrap.ts';

/** Under this width, drawing units, only the reading and the stops are named: the rest stands in the notes. */
const NARROW = 530;
/** No label is wider than this share of the view. */
const WIDEST = 0.55;
/** Between the strokes of the earth, drawing units. */
const EARTH = 9;

/** The profile of a study that has one, inside a frame. */
export function profileDrawing(study: Study, frame: ProfileFrame, units: UnitSystem): string {
  const { edge, descent, angle } = study;
  const profile = study.profile!;
  if (!edge || !descent) return '';
  const { px, py, scale, pens, box, taken } = frame;
  const through = (distanceM: readonly number[], elevationM: readonly number[]): number[] =>
    distanceM.flatMap((d, i) => [px(d), py(elevationM[i])]);
  const ground = through(profile.distanceM, profile.elevationM);
  const behind = [px(0), py(edge.elevationM), ...through(profile.behind.distanceM, profile.behind.elevationM)];
  const rope = through(descent.ropeCorners.distanceM, descent.ropeCorners.elevationM);
  const heightAt = heightReader(profile.distanceM, profile.elevationM);
  const groundPen = angle?.class === 'undecided' ? pens.groundUndecided : pens.ground;
  // The line is as wide as the elevation is uncertain, never under 1.4.
  const groundWidth = Math.max(1.4, Math.min(8, 2 * (study.terrain.verticalRmseM ?? 0) * scale));
  taken.push(...boxesAlong(ground, 6), ...boxesAlong(behind, 6), ...boxesAlong(rope, 5));

  const parts: string[] = [];
  const fan = edgeFan(frame, edge.elevationM, angle?.rule ?? null, (rangeM) =>
    toDegrees(Math.atan2(edge.elevationM - heightAt(rangeM * 0.85), rangeM * 0.85)),
  );
  parts.push(fan.ink);
  parts.push(element('path', { ...groundPen, d: pathThrough(behind), 'stroke-width': groundWidth }));
  parts.push(element('path', { ...groundPen, d: pathThrough(ground), 'stroke-width': groundWidth }));
  parts.push(element('path', { ...pens.earth, d: earth(behind) + earth(ground) }));
  if (angle) parts.push(readingProtractor(frame, angle, heightAt));
  if (rope.length > 2) parts.push(element('path', { ...pens.rope, d: pathThrough(rope) }));
  parts.push(fan.words);
  parts.push(attendantAtEdge(px(0), py(edge.elevationM), scale, pens));
  taken.push({ x0: px(0) - 8, y0: py(edge.elevationM) - 34, x1: px(0) + 8, y1: py(edge.elevationM) + 4 });
  parts.push(dropDimension(study, frame, units));

  const width = box.x1 - box.x0;
  const labels = profileLabels(study, units, frame, heightAt)
    .filter(({ pen }) => width >= NARROW || pen !== 'small')
    .map((label) => ({
      ...label,
      lines: label.lines.flatMap((words) => wrap(words, width * WIDEST, advance(12, 'sans'))),
    }));
  const space = { bounds: box, taken, words: [] };
  for (const placed of placeOnSlope(labels, space)) parts.push(labelWithLeader(placed, pens));
  for (const contact of descent.contacts) {
    parts.push(
      element('circle', { ...pens.contact, cx: px(contact.distanceM), cy: py(heightAt(contact.distanceM)), r: 3.6 }),
    );
  }
  parts.push(endSign(px(descent.horizontalM), py(descent.end.elevationM) - 5, 5.5, pens));
  parts.push(element('circle', { ...pens.contact, class: 'edge-dot', cx: px(0), cy: py(edge.elevationM), r: 3 }));
  return parts.join('');
}

/** Linear reading of the profile's own samples at a distance, metres. */
function heightReader(distanceM: readonly number[], elevationM: readonly number[]): (m: number) => number {
  return (m) => {
    let i = 0;
    while (i < distanceM.length - 2 && distanceM[i + 1] < m) i++;
    const run = distanceM[i + 1] - distanceM[i] || 1;
    const t = Math.min(1, Math.max(0, (m - distanceM[i]) / run));
    return elevationM[i] + t * (elevationM[i + 1] - elevationM[i]);
  };
}

/** Short strokes under the ground, so that no rope is taken for it; x, y pairs along the line. */
function earth(line: readonly number[]): string {
  let d = '';
  let next = EARTH / 2;
  for (let i = 0; i + 3 < line.length; i += 2) {
    const [ax, ay, bx, by] = [line[i], line[i + 1], line[i + 2], line[i + 3]];
    const length = Math.hypot(bx - ax, by - ay);
    for (; next < length; next += EARTH) {
      const t = next / length;
      d += `M${num(ax + (bx - ax) * t)} ${num(ay + (by - ay) * t + 2)}l-4 5`;
    }
    next -= length;
  }
  return d;
}
