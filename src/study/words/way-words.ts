import type { Study } from '../study.ts';
import { minuteWords } from './crew-words.ts';

/** The leading way where it is no raise: carry, or lower to where a vehicle comes. */
export function wayWords({ ways, given }: Omit<Study, 'sentence'>): string | null {
  const [way] = ways;
  if (!way?.allowed || way.kind === 'raise' || way.reachedBy !== 'vehicle') return null;
  const people = `${way.people.count} people${way.people.atMin === null ? '' : ` ${minuteWords(way.people.atMin)}`}`;
  const cycles = given.patients > 1 ? ` for ${given.patients} patients, one cycle each` : '';
  const time =
    way.minutes.from === null ? '' : `, ${way.minutes.from} to ${way.minutes.to} min after first arrival${cycles}`;
  if (way.kind === 'carry') {
    return `${way.bearers === 4 ? 'Four' : 'Six'} carry, one line, no haul: ${people}${time}. Else:`;
  }
  return `Lower to ${way.meets}, no haul: ${people}${time}. Else:`;
}
