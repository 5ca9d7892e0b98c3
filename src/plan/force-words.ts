import type { StudyForce, StudyLayout } from '../study/index.ts';
import { formatForce, type UnitSystem } from '../units/index.ts';

/** Greatest force at a place of a layout with hold and strength against what is needed; null where nothing is listed there. */
export function forceWords(layout: StudyLayout, place: string, units: UnitSystem): string | null {
  const here = layout.forces.filter(({ at, kind }) => at.startsWith(place) && kind !== 'grab' && kind !== 'part');
  if (here.length === 0) return null;
  const greatest = Math.max(...here.map(({ kn }) => kn));
  const hold = weakest(here.filter(({ kind }) => kind === 'hold'));
  const strength = weakest(here.filter(({ kind }) => kind !== 'hold'));
  const parts = [
    ...(hold ? [`hold ${against(hold)}`] : []),
    ...(strength ? [`strength ${against(strength)}`] : []),
    ...(here.some(({ ok }) => ok === 'judge on site') ? ['judge on site'] : []),
  ];
  return [formatForce(greatest, units, 'up'), ...parts].join(', ');
}

/** The force with the least factor for what it needs. */
function weakest(forces: readonly StudyForce[]): StudyForce | null {
  const told = forces.filter(({ factor, required }) => factor !== null && required !== null);
  const share = ({ factor, required }: StudyForce): number => factor! / required!;
  return told.reduce<StudyForce | null>(
    (least, force) => (least && share(least) <= share(force) ? least : force),
    null,
  );
}

/** Rounded down, so that what is just short never reads as met. */
function against({ factor, required, ok }: StudyForce): string {
  const figure = (Math.floor(factor! * 10 + 1e-9) / 10).toFixed(1);
  return `${figure} of ${required} needed${ok === 'no' ? ', not met' : ''}`;
}
