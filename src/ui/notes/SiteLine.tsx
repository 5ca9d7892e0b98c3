import type { Study } from '../../study/index.ts';
import { formatLength } from '../../units/index.ts';
import { shownStudy, useBook, usePlace, useReading, useStudy } from '../state/index.ts';

/** Name, road, distance along it and side in driving words; of a site that nobody has checked on the ground, that too. */
export function SiteLine({ site }: { readonly site: Study['site'] }) {
  const units = useReading((state) => state.units);
  const subject = usePlace((state) => state.subject);
  const record = useBook((state) => (subject?.kind === 'site' ? state.sites.get(subject.id) : undefined));
  const isChecked = useStudy((state) => (shownStudy(state)?.check?.method ?? 'desk') !== 'desk');
  return (
    <p className="site-line">
      {record && (isChecked ? record.name : <i>{record.name}</i>)}
      {record && '. '}
      {site.road.name ?? 'Unnamed road'}, {formatLength(site.road.stationM, units)} along it, {site.sideWords}
      {record && !isChecked && (
        <>
          ; <span className="accent">not checked</span>
        </>
      )}
    </p>
  );
}
