import { changedSince, type EventRecord, type SignOffRecord, type SiteRecord } from '../../book/index.ts';
import type { PlaceAlong } from '../../workers/index.ts';
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
  /** Day of the last event that nobody has been there after; null where there is none. */
  readonly changedOn: string | null;
  /** Lower-case words that the search looks in. */
  readonly words: string;
  /** Place in the order of names, and of roads with names within them. */
  readonly byName: number;
  readonly byRoad: number;
  /** Where along its road it lies; null where no road is near or it is not known yet. */
  readonly along: PlaceAlong | null;
}

/** Places of sites in the orders of words: the comparing of words is done once, not at every search. */
export type SiteOrder = ReadonlyMap<string, Pick<SiteRow, 'byName' | 'byRoad' | 'along'>>;

/**
 * All sites by name, of equal names by id. `before` is the order as it was: sites that are still there keep their places, so that after an edit few
 * words are compared again.
 */
export function sitesByName(
  sites: ReadonlyMap<string, SiteRecord>,
  before: readonly SiteRecord[] = [],
): readonly SiteRecord[] {
  const stayed = before.flatMap(({ id }) => sites.get(id) ?? []);
  const known = new Set(stayed.map(({ id }) => id));
  const names = [...stayed, ...[...sites.values()].filter(({ id }) => !known.has(id))];
  return names.sort((a, b) => collator.compare(a.name, b.name) || (a.id < b.id ? -1 : 1));
}

/**
 * The orders of all sites, given by name. By road: roads by name, along each as far as `places` (by site) knows, then by
 * name; sites off every road come last in theirs, those without a road name last of all.
 */
export function siteOrder(
  names: readonly SiteRecord[],
  places: ReadonlyMap<string, PlaceAlong | null> = new Map(),
): SiteOrder {
  const roads = [...new Set(names.map(({ roadName }) => roadName ?? '\uffff'))].sort(collator.compare);
  const roadPlace = new Map(roads.map((road, i) => [road, i]));
  const keys = names.map(({ id, roadName }, byName) => ({
    id,
    byName,
    road: roadPlace.get(roadName ?? '\uffff')!,
    along: places.get(id) ?? null,
  }));
  const inOrder = [...keys].sort((a, b) => a.road - b.road || metres(a.along) - metres(b.along) || a.byName - b.byName);
  return new Map(inOrder.map(({ id, byName, along }, byRoad) => [id, { byName, byRoad, along }]));
}

/** Those whose place is not known come last. */
const metres = (along: PlaceAlong | null): number => along?.m ?? Number.MAX_VALUE;

/** Rows of all sites in their `order`. `reads` as far as they have been made; `events` mark the sites that lie in their areas. */
export function siteRows(
  sites: ReadonlyMap<string, SiteRecord>,
  reads: ReadonlyMap<string, SiteRow['read']>,
  signOffs: ReadonlyMap<string, SignOffRecord>,
  order: SiteOrder = siteOrder(sitesByName(sites)),
  events: ReadonlyMap<string, EventRecord> = new Map(),
): SiteRow[] {
  const happened = [...events.values()];
  const checked = new Map<string, string>();
  for (const { siteId, on, method } of signOffs.values()) {
    if (method !== 'desk' && on > (checked.get(siteId) ?? '')) checked.set(siteId, on);
  }
  return [...sites.values()].map((site) => ({
    site,
    read: reads.get(site.id) ?? null,
    checkedOn: checked.get(site.id) ?? null,
    changedOn: happened.length === 0 ? null : lastChange(site, happened, checked.get(site.id) ?? null),
    words: wordsOf(site),
    ...order.get(site.id)!,
  }));
}

const words = new WeakMap<SiteRecord, string>();

/** A record never changes: its words are made once. */
function wordsOf(site: SiteRecord): string {
  const known = words.get(site);
  if (known !== undefined) return known;
  const made = `${site.name} ${site.roadName ?? ''} ${site.type} ${site.notes}`.toLowerCase();
  words.set(site, made);
  return made;
}

function lastChange({ place, patientPoint }: SiteRecord, events: readonly EventRecord[], on: string | null) {
  const path = patientPoint ? [place, patientPoint] : [place];
  return changedSince(path, events, on, null).sinceSurvey.at(-1)?.on ?? null;
}

/** Rows whose words hold every word of the search and that the filter lets through, sorted; equal ones by name. */
export function pickRows(rows: readonly SiteRow[], search: string, filter: Filter, sort: Sort): SiteRow[] {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  const picked = rows.filter((row) => passes(row, filter) && words.every((word) => row.words.includes(word)));
  return picked.sort((a, b) => sortKey(a, sort) - sortKey(b, sort) || a.byName - b.byName);
}

const collator = new Intl.Collator('en', { numeric: true });

const passes = ({ read, checkedOn, changedOn }: SiteRow, filter: Filter): boolean => {
  if (filter === 'not checked') return checkedOn === null || changedOn !== null;
  if (filter === 'undecided') return read !== null && 'className' in read && read.className === 'undecided';
  return filter !== 'high' || (read !== null && 'planAs' in read && read.planAs === 'high');
};

function sortKey({ read, byRoad, byName }: SiteRow, sort: Sort): number {
  if (sort === 'road') return byRoad;
  if (sort === 'name') return byName;
  if (!read || !('governingDeg' in read)) return 0;
  return sort === 'steepest' ? -read.governingDeg : -read.ropeLineM;
}
