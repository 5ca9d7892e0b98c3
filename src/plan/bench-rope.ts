import type { Study, StudyLayout } from '../study/index.ts';
import { planGround } from './plan-ground.ts';
import type { ProfileFrame } from './profile-frame.ts';
import { element, pathThrough } from './svg.ts';

/**
 * The main line over the bench on the profile, from where it last bends or is tied to the edge, laid on the ground: how high
 * it is tied is not known. Nothing where the ground behind the edge was not read that far.
 */
export function benchRope(study: Study, layout: StudyLayout, frame: ProfileFrame): string {
  const { edge, profile, angle } = study;
  if (!edge || !profile) return '';
  const { px, py, pens } = frame;
  const [along] = planGround(study).place(layout.points.turn ?? layout.points.anchor);
  const { distanceM, elevationM } = profile.behind;
  const line = [px(0), py(edge.elevationM)];
  for (let i = 0; i < distanceM.length && distanceM[i] >= along; i++) line.push(px(distanceM[i]), py(elevationM[i]));
  if (line.length < 4 || !line.every(Number.isFinite) || along < distanceM[distanceM.length - 1]) return '';
  const [x, y] = line.slice(-2);
  const pen = angle?.planAs === 'high' ? pens.ropeForTeam : pens.rope;
  return (
    element('path', { ...pen, class: 'rope bench-line', d: pathThrough(line) }) +
    element('circle', { ...pens.accentFill, class: 'turn accent-fill', cx: x, cy: y, r: 4 })
  );
}
