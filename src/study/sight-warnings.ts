import { formatLength, type UnitSystem } from '../units/index.ts';
import type { StudyClosure, StudyWarning } from './study.ts';

/**
 * A warning where drivers see the site later than they can stop. `from` names where a driver comes from who drives along the
 * drawing of the road (`before`) and against it (`after`), as compass words.
 */
export function sightWarnings(
  { stoppingSightM, sightM, short }: Pick<StudyClosure, 'stoppingSightM' | 'sightM' | 'short'>,
  from: { readonly before: string; readonly after: string },
  units: UnitSystem,
): StudyWarning[] {
  if (short.length === 0) return [];
  const seen = short.map((way) => {
    const sight = sightM[way];
    return `from the ${from[way]} ${sight === null ? 'it is not known' : formatLength(sight, units, 'down')}`;
  });
  const text = `Drivers see the site too late: stopping takes ${formatLength(stoppingSightM, units, 'up')}, ${seen.join(', ')} (at best, vegetation not seen). Warn traffic farther out.`;
  return [{ code: 'sight-short', severity: 'check', text }];
}
