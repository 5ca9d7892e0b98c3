import type { Study } from '../../study/index.ts';
import { formatLength } from '../../units/index.ts';
import { useBook, usePlace, useReading } from '../state/index.ts';

/** Name, road, distance along it and side in driving words. */
export function SiteLine({ site }: { readonly site: Study['site'] }) {
  const units = useReading((state) => state.units);
  const subject = usePlace((state) => state.subject);
  const record = useBook((state) => (subject?.kind === 'site' ? state.sites.get(subject.id) : undefined));
  return (
    <p className="site-line">
      {record && `${record.name}. `}
      {site.road.name ?? 'Unnamed road'}, {formatLength(site.road.stationM, units)} along it, {site.sideWords}
    </p>
  );
}
