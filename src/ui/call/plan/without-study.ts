import {
  type Book,
  callsFor,
  changedSince,
  defaultResponse,
  fieldCheck,
  live,
  type ResponseRow,
  responseOf,
} from '../../../book/index.ts';
import { formatDegreesMinutes, formatUsng } from '../../../geo/index.ts';
import type { CallSite } from '../../../io/offline/index.ts';
import { placeWords } from '../../../plan/index.ts';
import { changedWords, type StudyCall } from '../../../study/index.ts';
import type { UnitSystem } from '../../../units/index.ts';

/** What an officer can still use of a site that could not be worked out. */
export interface WithoutStudy {
  /** What changed since somebody was there: sentences. */
  readonly stops: readonly string[];
  /** Degrees and minutes, and the national grid where it reaches. */
  readonly position: readonly string[];
  /** A `geo` address, which a phone's own map opens [source: rfc5870]. */
  readonly geo: string;
  readonly radio: string | null;
  readonly notes: string;
  /** Landing zone, staging and parking, each a sentence. */
  readonly places: readonly string[];
  readonly calls: readonly StudyCall[];
  /** Day of the last check by somebody who was there; null where nobody was. */
  readonly checkedOn: string | null;
}

/**
 * The book's words for a site without a study; loaded when one is shown. What is not known calls as if it were short: nobody is left
 * uncalled for want of a number.
 */
export function withoutStudy(book: Book | null, site: CallSite, units: UnitSystem): WithoutStudy {
  const record = book && live(book, 'sites').find(({ id }) => id === site.id);
  const response = book ? responseOf(book).value : defaultResponse;
  const unknown = { ropeShort: true, peopleShort: true, water: true, laneClosed: true };
  const hazards = [...new Set(response.flatMap(({ when }) => when.hazards ?? []))];
  const inField = book && fieldCheck(live(book, 'signOffs'), site.id, 12, '9999-12-31').inField;
  const events = book ? changedSince([site], live(book, 'events'), inField?.on ?? null, null).sinceSurvey : [];
  const usng = formatUsng(site);
  return {
    stops: events.map(({ name, on }) => changedWords(name, on)),
    position: [formatDegreesMinutes(site), ...(usng === null ? [] : [`US National Grid ${usng}`])],
    geo: `geo:${site.lat.toFixed(6)},${site.lon.toFixed(6)}`,
    radio: record?.radio ?? null,
    notes: record?.notes.trim() ?? '',
    places: (book ? live(book, 'supportPlaces') : [])
      .filter(({ siteId }) => siteId === site.id)
      .map((place) => `${placeWords(site, place, units)}.`),
    calls: oncePerName(callsFor(response, { planAs: null, ...unknown, hazards })),
    checkedOn: inField?.on ?? site.checkedOn,
  };
}

/** Each of those to call once, with every reason for which the table would ask: none of them is known to hold here. */
function oncePerName(rows: readonly ResponseRow[]): StudyCall[] {
  const calls = new Map<string, StudyCall>();
  for (const { resource: who, why, agency, phone, radio } of rows) {
    const key = JSON.stringify([who, agency, phone, radio]);
    const before = calls.get(key);
    const reason = why === '' ? '' : `if ${why}`;
    calls.set(key, { who, agency, phone, radio, why: [before?.why ?? '', reason].filter(Boolean).join(', ') });
  }
  return [...calls.values()];
}
