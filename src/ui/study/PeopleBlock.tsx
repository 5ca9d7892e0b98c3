import type { Study, StudyCount } from '../../study/index.ts';
import { useSketch } from '../state/index.ts';
import { peopleSteps } from './people-steps.ts';

const WIDE = 520;
const TALL = 104;
const FOOT = 84;
const HEAD = 10;

/** Who is there as a step line, who is needed to lower and to raise as bars, on one minute scale: a bar above the line is a shortage. */
export function PeopleBlock({ study }: { readonly study: Study }) {
  const layoutId = useSketch((state) => state.layoutId);
  const layout = study.layouts.find(({ id }) => id === layoutId) ?? study.layouts[0];
  if (!layout || study.arriving.length === 0 || study.angle?.planAs === 'high') return null;
  const { people, minutes } = layout;
  const { closure, rig, lower, package: pack, raise } = minutes.parts;
  const steps = peopleSteps(study.arriving);
  const lowerFrom = Math.max(closure + rig, people.leastLower.atMin ?? 0);
  const raiseFrom = Math.max(lowerFrom + lower + pack, people.leastRaise.atMin ?? 0);
  const end = Math.max(raiseFrom + raise, (steps.at(-1)?.atMin ?? 0) + 5, 30);
  const most = Math.max(people.full.count, ...steps.map(({ there }) => there)) * 1.12;
  const x = (min: number): number => (min / end) * WIDE;
  const y = (n: number): number => FOOT - (n / most) * (FOOT - HEAD);
  const path = (aid: boolean): string =>
    steps
      .map((step, i) => {
        if (step.aid !== aid) return '';
        const before = steps[i - 1]?.there ?? 0;
        const until = steps[i + 1]?.atMin ?? end;
        return `M${x(step.atMin)} ${y(before)}V${y(step.there)}H${x(until)}`;
      })
      .join('');
  const needs = [
    { words: `lower ${people.leastLower.count}`, count: people.leastLower, from: lowerFrom, to: raiseFrom },
    { words: `raise ${people.leastRaise.count}`, count: people.leastRaise, from: raiseFrom, to: end },
  ];
  return (
    <section className="block" aria-labelledby="people-head">
      <div className="block-head">
        <h2 id="people-head">People against arrivals</h2>
        <span className="note">{countWords(people)}</span>
      </div>
      <svg className="people" viewBox={`-14 0 ${WIDE + 24} ${TALL}`} role="img" aria-label={countWords(people)}>
        {needs.map(({ words, count, from, to }) => (
          <g key={words}>
            <path className="need" d={`M${x(from)} ${FOOT}V${y(count.count)}H${x(to)}V${FOOT}Z`} />
            <path className="need-top" d={`M${x(from)} ${y(count.count)}H${x(to)}`} />
            <text x={x((from + to) / 2)} y={FOOT - 6} textAnchor="middle">
              {words}
            </text>
          </g>
        ))}
        <path className="there" d={path(false)} />
        <path className="there aid" d={path(true)} />
        {steps.map(({ atMin, there, units, aid }) => (
          <text key={atMin} className={aid ? 'unit aid' : 'unit'} x={x(atMin) + 3} y={y(there) - 3}>
            {units.map(short).join(' ')}
          </text>
        ))}
        <path
          className="minutes"
          d={`M0 ${FOOT}H${WIDE}${ticks(end)
            .map((t) => `M${x(t)} ${FOOT}v4`)
            .join('')}`}
        />
        {ticks(end).map((t) => (
          <text key={t} x={x(t)} y={FOOT + 15} textAnchor="middle">
            {t}
          </text>
        ))}
        <text x={WIDE} y={FOOT + 15} textAnchor="end">
          min
        </text>
      </svg>
    </section>
  );
}

const ticks = (end: number): number[] => Array.from({ length: Math.floor((end - 4) / 10) + 1 }, (_, i) => 10 * i);

/** "Engine 2" as "E2": the drawing is small, the names stand in the study. */
const short = (unit: string): string =>
  unit
    .replace(/^(\w)\w*\s+(\d+)$/, '$1$2')
    .replace(/^(\w)\w+ (\w)\w+$/, '$1. $2.')
    .slice(0, 12);

const at = ({ count, atMin }: StudyCount, what: string): string =>
  `${count} ${what}${atMin === null ? ', never there' : atMin > 0 ? ` at ${Math.round(atMin)} min` : ''}`;

const countWords = ({ contact, leastLower, leastRaise, full }: Study['layouts'][number]['people']): string =>
  [contact && at(contact, 'contact'), at(leastLower, 'lower'), at(leastRaise, 'raise'), at(full, 'full')]
    .filter(Boolean)
    .join(', ');
