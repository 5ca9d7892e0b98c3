import type { SignOffRecord, SiteRecord } from '../../book/index.ts';
import type { SiteRead } from '../state/index.ts';

export const filters = ['all', 'not checked', 'undecided', 'high'] as const;
export type Filter = (typeof filters)[number];
export const sorts = ['road', 'name', 'steepest', 'longest rope'] as const;
export type Sort = (typeof sorts)[number];

/** A site of the list with what is known of it. */
export interface SiteRow {
  readonly site: SiteRecord;
  readonly read: SiteRead | { readonly none: string } | null;
  /** Year of the last check on the ground; null where nobody checked. */
  readonly checkedOn: string | null;
  /** Lower-case words that the search looks in. */
  readonly words: string;
}

/** Rows of all sites. `reads` as far as they have been made. */
export function siteRows(
  sites: ReadonlyMap<string, SiteRecord>,
  reads: ReadonlyMap<string, SiteRow['read']>,
  signOffs: ReadonlyMap<string, SignOffRecord>,
): SiteRow[] {
  const checked = new Map<string, string>();
  for (const { siteId, on, method } of signOffs.values()) {
    if (method !== 'desk' && on > (checked.get(siteId) ?? '')) checked.set(siteId, on);
  }
  return [...sites.values()].map((site) => ({
    site,
    read: reads.get(site.id) ?? null,
    checkedOn: checked.get(site.id) ?? null,
    words: `${site.name} ${site.roadName ?? ''} ${site.type} ${site.notes}`.toLowerCase(),
  }));
}

/** Rows whose words hold every word of the search and that the filter lets through, sorted; equal ones by name. */
export function pickRows(rows: readonly SiteRow[], search: string, filter: Filter, sort: Sort): SiteRow[] {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  const picked = rows.filter((row) => passes(row, filter) && words.every((word) => row.words.includes(word)));
  const keys = new Map(picked.map((row) => [row, sortKey(row, sort)]));
  return picked.sort((a, b) => compare(keys.get(a)!, keys.get(b)!) || collator.compare(a.site.name, b.site.name));
}

const collator = new Intl.Collator('en', { numeric: true });

const passes = ({ read, checkedOn }: SiteRow, filter: Filter): boolean => {
  if (filter === 'not checked') return checkedOn === null;
  if (filter === 'undecided') return read !== null && 'className' in read && read.className === 'undecided';
  return filter !== 'high' || (read !== null && 'planAs' in read && read.planAs === 'high');
};

function sortKey({ site, read }: SiteRow, sort: Sort): string | number {
  if (sort === 'road') return site.roadName ?? '\uffff';
  if (sort === 'name') return '';
  if (!read || !('governingDeg' in read)) return 0;
  return sort === 'steepest' ? -read.governingDeg : -read.ropeLineM;
}

const compare = (a: string | number, b: string | number): number =>
  typeof a === 'number' && typeof b === 'number' ? a - b : collator.compare(String(a), String(b));
