import { type Book, changedSince, type EventRecord, live, type SignOffRecord } from '../../book/index.ts';

/** What every file says of a site beside its own fields. */
export interface SiteFacts {
  /** The last check by somebody who was there; a check at the desk is none. */
  readonly check: SignOffRecord | null;
  /** Changes of ground or road that nobody has been there after: a stop. */
  readonly changed: readonly EventRecord[];
}

/** Facts of each site of a book that is not deleted, by its id. */
export function siteFacts(book: Book): ReadonlyMap<string, SiteFacts> {
  const checks = new Map<string, SignOffRecord>();
  for (const check of live(book, 'signOffs')) {
    const known = checks.get(check.siteId);
    if (check.method !== 'desk' && (!known || check.on > known.on)) checks.set(check.siteId, check);
  }
  const events = live(book, 'events');
  return new Map(
    live(book, 'sites').map((site) => {
      const check = checks.get(site.id) ?? null;
      const path = site.patientPoint ? [site.place, site.patientPoint] : [site.place];
      return [site.id, { check, changed: changedSince(path, events, check?.on ?? null, null).sinceSurvey }];
    }),
  );
}

/** The stop that stands first wherever a site changed since its survey; null where it did not. */
export const changedWords = ({ changed }: SiteFacts): string | null =>
  changed.length === 0
    ? null
    : `STOP: changed since survey: ${changed.map(({ name, kind, on }) => `${name} (${kind}, ${on})`).join('; ')}`;
