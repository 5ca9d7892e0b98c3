import type { Study, StudyWay } from '../../study/index.ts';
import { formatLength, type UnitSystem } from '../../units/index.ts';

/** The ways to end the job, by rank, and whom to call. */
export function WaysBlock({ study, units }: { readonly study: Study; readonly units: UnitSystem }) {
  const { ways, call, angle } = study;
  const high = angle?.planAs === 'high';
  if (ways.length === 0 && call.length === 0) return null;
  return (
    <section className="block" aria-label="Ways and calls">
      {ways.length > 0 && (
        <p className="ways">
          <i>Ways</i>{' '}
          {ways.map((way) => (
            <span key={way.kind} className={way.allowed ? undefined : 'not-allowed'}>
              <b>{way.kind}</b>: {wayWords(way, units, high)}{' '}
            </span>
          ))}
        </p>
      )}
      {call.length > 0 && (
        <p className="ways">
          <i>Call</i>{' '}
          {call
            .map(({ who, why, phone, radio }) => `${who} (${[why, phone, radio].filter(Boolean).join(', ')})`)
            .join('; ')}
          .
        </p>
      )}
    </section>
  );
}

function wayWords({ ropeM, people, minutes, meets, allowed, why }: StudyWay, units: UnitSystem, high: boolean): string {
  const parts = [
    !high && minutes.from !== null && minutes.to !== null ? `${minutes.from} to ${minutes.to} min` : '',
    high ? '' : `${people.count} people`,
    ropeM === null ? '' : `${formatLength(ropeM, units, 'up')} of rope`,
    `meets ${meets}`,
    allowed ? '' : (why.at(-1) ?? 'not possible with what comes').replace(/\.$/, ''),
  ];
  return `${parts.filter(Boolean).join(', ')}.`;
}
