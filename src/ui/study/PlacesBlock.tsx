import { type ComponentProps, lazy, Suspense } from 'react';
import { useBook } from '../state/index.ts';
import type { PlacesRow as Row } from './PlacesRow.tsx';

/** Not a part of what must be there first: its distances bring the map projection along. */
const PlacesRow = lazy(async () => ({ default: (await import('./PlacesRow.tsx')).PlacesRow }));

/** The places surveyed for the site; nothing where there are none. */
export function PlacesBlock(props: ComponentProps<typeof Row>) {
  const any = useBook(({ supportPlaces }) => [...supportPlaces.values()].some(({ siteId }) => siteId === props.siteId));
  return any ? (
    <Suspense fallback={null}>
      <PlacesRow {...props} />
    </Suspense>
  ) : null;
}
