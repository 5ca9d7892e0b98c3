import { useMemo } from 'react';
import { compassWord } from '../../units/index.ts';
import { writeAddress } from '../address.ts';
import { useActions } from '../desk-context.ts';
import { distanceWords } from '../distance-words.ts';
import { useBook, usePlace, useReading, useReads } from '../state/index.ts';
import { neighboursOf } from '../survey/neighbours.ts';

/** The sites before and after this one along its road, each with the way there and how far. */
export function AlongRoad() {
  const { desk } = useActions();
  const subject = usePlace((state) => state.subject);
  const screen = usePlace((state) => state.screen);
  const units = useReading((state) => state.units);
  const sites = useBook((state) => state.sites);
  const along = useReads((state) => state.along);
  const id = subject?.kind === 'site' ? subject.id : null;
  const { before, after } = useMemo(() => neighboursOf(id ?? '', sites, along), [id, sites, along]);
  if (!before && !after) return null;
  return (
    <nav className="along-road" aria-label="Sites along the road">
      {[before, after].map(
        (other) =>
          other && (
            <a
              key={other.id}
              href={writeAddress({ screen, subject: { kind: 'site', id: other.id }, view: null })}
              title={other === before ? 'The site before it along the road (,)' : 'The next site along the road (.)'}
              onClick={(event) => {
                event.preventDefault();
                desk.show({ kind: 'site', id: other.id });
              }}
            >
              {other.towardDeg === null ? 'here too' : compassWord(other.towardDeg)} <b>{other.name}</b>{' '}
              <span className="num">{distanceWords(other.alongM, units)}</span>
            </a>
          ),
      )}
    </nav>
  );
}
