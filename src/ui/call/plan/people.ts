import type { Study, StudyCount } from '../../../study/index.ts';

/** Who is needed against who comes, the shortage told before the rest. */
export function peopleWords({ layouts, arriving }: Study): {
  text: string;
  strong: string | null;
  more: string | null;
} {
  const { people, minutes } = layouts[0]!;
  const at = ({ count, atMin }: StudyCount, does: string): string =>
    atMin === null
      ? `${count} to ${does}: never come`
      : atMin > 0
        ? `${count} ${does} ${atMin} min`
        : `${count} ${does}`;
  const text = [...(people.contact ? [at(people.contact, 'at once')] : []), at(people.leastLower, 'lower')].join(', ');
  const alarm = arriving.filter(({ tier }) => tier !== 'mutual aid').reduce((sum, one) => sum + one.people, 0);
  const short = people.leastRaise.count - alarm;
  const raise = at(people.leastRaise, 'raise');
  const time = minutes.from === null ? 'no time can be told' : `road in ${minutes.from} to ${minutes.to} min`;
  return {
    text: `${text}, ${raise}`,
    strong: short > 0 ? `First alarm ${short} short` : null,
    more: time,
  };
}
