import type { LonLat } from '../../geo/index.ts';
import type { EventRecord } from '../schema/index.ts';
import { touchesArea } from './in-area.ts';

/** What events mean for one site. */
export interface ChangedSince {
  /** Events that nobody has been on site after, earliest first: a stop on the sheet. */
  readonly sinceSurvey: readonly EventRecord[];
  /** Events that the elevation is older than, or may be: it is for screening only. */
  readonly sinceElevation: readonly EventRecord[];
}

/**
 * Events in whose area a site lies. `path`: the site, its patient point, the descent, as far as they are known. `inFieldOn`: day
 * of the last check by somebody who was there; a check on the day of the event itself may have come before it and does not
 * count. `collectedOn`: day of the elevation; null (unknown) counts as older.
 */
export function changedSince(
  path: readonly LonLat[],
  events: readonly EventRecord[],
  inFieldOn: string | null,
  collectedOn: string | null,
): ChangedSince {
  const here = events
    .filter((event) => !event.deleted && touchesArea(path, event.area))
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : a.id < b.id ? -1 : 1));
  return {
    sinceSurvey: here.filter(({ on }) => inFieldOn === null || inFieldOn <= on),
    sinceElevation: here.filter(({ on }) => collectedOn === null || collectedOn <= on),
  };
}
