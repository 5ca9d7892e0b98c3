import type { Study } from '../study/index.ts';
import { formatAngleRange, formatDegrees, formatLength, type UnitSystem } from '../units/index.ts';
import { endWords } from './end-words.ts';
import type { Label } from './label-space.ts';
import type { ProfileFrame } from './profile-frame.ts';

/** What is named on a profile, the deciding things first. */
export function profileLabels(
  { angle, descent, edge }: Study,
  units: UnitSystem,
  { px, py }: ProfileFrame,
  heightAt: (m: number) => number,
): Label[] {
  const list: Label[] = [];
  const at = (distanceM: number, lines: string[], pen: Label['pen'] = 'label') =>
    list.push({ x: px(distanceM), y: py(heightAt(distanceM)), lines, pen });
  const length = (m: number) => formatLength(m, units);
  if (!descent || !edge) return list;
  if (angle) {
    const reading =
      angle.class === 'undecided' ? `class undecided, as ${angle.planAs}` : `class read here: ${angle.class}`;
    at(
      (angle.stretchM[0] + angle.stretchM[1]) / 2,
      [
        `${formatDegrees(angle.governingDeg)}, ${formatAngleRange(angle.rangeDeg[0], angle.rangeDeg[1])}`,
        `${reading}, steepest ${length(angle.stretchM[1] - angle.stretchM[0])}`,
      ],
      'strong',
    );
  }
  for (const step of descent.steps) at(step.distanceM, [`step about ${length(step.heightM)}: stop`], 'stop');
  at(
    descent.horizontalM,
    [endWords[descent.end.why], `rope line ${formatLength(descent.ropeLineM, units, 'up')}`],
    'small',
  );
  for (const contact of descent.contacts) {
    at(contact.distanceM, [`contact, bend ${formatDegrees(contact.bendDeg)}`], 'small');
  }
  for (const crossing of descent.crossings) {
    at(crossing.distanceM, [`${crossing.kind}, ${length(crossing.widthM)} wide`], 'small');
  }
  if (descent.sightLostAtM !== null) {
    at(descent.sightLostAtM, [`load out of sight from ${length(descent.sightLostAtM)}`], 'small');
  }
  return list;
}
