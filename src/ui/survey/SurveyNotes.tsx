import { useMemo, useRef, useState } from 'react';
import type { SiteRecord } from '../../book/index.ts';
import { useActions } from '../desk-context.ts';
import { useBook, useDistrict, useMapGone, usePlace, useReading, useReads } from '../state/index.ts';
import { PositionFind } from './PositionFind.tsx';
import { SiteTable } from './SiteTable.tsx';
import { type Filter, filters, pickRows, type Sort, siteOrder, siteRows, sitesByName, sorts } from './site-rows.ts';

/** The list of sites with its search, filter and order. */
export function SurveyNotes() {
  const { desk } = useActions();
  const [search, setSearch] = useState('');
  const [filter, setFilter] = useState<Filter>('all');
  const [sort, setSort] = useState<Sort>('road');
  const units = useReading((state) => state.units);
  const sites = useBook((state) => state.sites);
  const noMap = useMapGone((state) => state.gone !== null);
  const signOffs = useBook((state) => state.signOffs);
  const reads = useReads((state) => state.bySite);
  const subject = usePlace((state) => state.subject);
  const along = useReads((state) => state.along);
  const turning = useDistrict((state) => state.turning);
  const named = useRef<readonly SiteRecord[]>([]);
  const names = useMemo(() => {
    named.current = sitesByName(sites, named.current);
    return named.current;
  }, [sites]);
  const order = useMemo(() => siteOrder(names, along), [names, along]);
  const events = useBook((state) => state.events);
  const rows = useMemo(() => siteRows(sites, reads, signOffs, order, events), [sites, reads, signOffs, order, events]);
  const picked = useMemo(() => pickRows(rows, search, filter, sort), [rows, search, filter, sort]);
  if (turning || (sites.size === 0 && !noMap)) return null;
  return (
    <section className="survey-list" aria-label="Sites">
      <div className="list-tools">
        <label className="search">
          <span className="unseen">Find a site, a road or a position</span>
          <input
            id="site-search"
            type="search"
            placeholder="Site, road, coordinates"
            value={search}
            onChange={(event) => setSearch(event.target.value)}
            onKeyDown={(event) => {
              if (event.key === 'Enter' && picked[0]) desk.show({ kind: 'site', id: picked[0].site.id });
              if (event.key === 'Escape') setSearch('');
            }}
          />
        </label>
        <label className="sort">
          <span>by</span>
          <select value={sort} onChange={(event) => setSort(event.target.value as Sort)}>
            {sorts.map((name) => (
              <option key={name}>{name}</option>
            ))}
          </select>
        </label>
        <fieldset className="words-switch">
          <legend className="unseen">Show</legend>
          {filters.map((name) => (
            <button key={name} type="button" aria-pressed={filter === name} onClick={() => setFilter(name)}>
              {name}
            </button>
          ))}
        </fieldset>
      </div>
      {picked.length > 0 ? (
        <SiteTable
          rows={picked}
          selected={subject?.kind === 'site' ? subject.id : null}
          units={units}
          byRoad={sort === 'road'}
        />
      ) : (
        (sites.size > 0 || search !== '') && (
          <p className="list-empty">
            {sites.size > 0 && 'No site fits. '}
            <PositionFind text={search} />
          </p>
        )
      )}
    </section>
  );
}
