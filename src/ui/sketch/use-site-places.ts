import { useMemo } from 'react';
import type { SupportPlaceRecord } from '../../book/index.ts';
import { useBook, usePlace } from '../state/index.ts';

/** Landing zones, staging and parking of the site on the desk; none of a point. */
export function useSitePlaces(): readonly SupportPlaceRecord[] {
  const zones = useBook((state) => state.supportPlaces);
  const siteId = usePlace(({ subject }) => (subject?.kind === 'site' ? subject.id : null));
  return useMemo(
    () => [...zones.values()].filter((place) => siteId !== null && place.siteId === siteId),
    [zones, siteId],
  );
}
