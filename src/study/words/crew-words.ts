import type { Study, StudyCount } from '../study.ts';

/** People against who arrives, and the minutes, of the first layout. */
export function crewWords({ layouts, arriving, given }: Omit<Study, 'sentence'>): string {
  const { people, team, minutes } = layouts[0]!;
  const all = arriving.reduce((sum, arrival) => sum + arrival.people, 0);
  const at = ({ count, atMin }: StudyCount, does: string, to: string): string =>
    atMin === null ? `${count} to ${to} never come (${all} do)` : `${count} ${does} ${minuteWords(atMin)}`;
  const counts = [
    ...(people.contact ? [at(people.contact, 'make contact', 'make contact')] : []),
    at(people.leastLower, 'lower', 'lower'),
    at(people.leastRaise, 'raise', 'raise'),
  ];
  const hang = team.allHang > team.walking ? `, ${team.allHang} if attendants hang` : '';
  const pull = `${team.walking} pull${team.checkGrab ? ' on two grabs' : ''}${hang}`;
  const cycles = given.patients > 1 ? ` for ${given.patients} patients, one cycle each` : '';
  const time =
    minutes.from === null
      ? 'No time can be told: people or rope do not come.'
      : `At the road ${minutes.from} to ${minutes.to} min after first arrival${cycles}, freeing not counted.`;
  return `${counts.join(', ')}: ${pull}. ${time}`;
}

/** "at once" or "at 8 min". */
export const minuteWords = (atMin: number): string => (atMin <= 0 ? 'at once' : `at ${atMin} min`);
