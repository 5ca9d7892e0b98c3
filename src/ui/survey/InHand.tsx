import { lazy, Suspense } from 'react';
import { useBook, useTool } from '../state/index.ts';

const MarkOpen = lazy(async () => ({ default: (await import('./MarkPanel.tsx')).MarkPanel }));
const PlacePanel = lazy(async () => ({ default: (await import('./PlacePanel.tsx')).PlacePanel }));

/** The panel of the mark in hand, loaded when the first one is; nothing while none is. */
export function MarkInHand() {
  const id = useTool((state) => state.markId);
  const isMark = useBook((state) => id !== null && state.marks.has(id));
  return isMark ? (
    <Suspense fallback={null}>
      <MarkOpen />
    </Suspense>
  ) : null;
}

/** The panel of the landing zone, staging or parking in hand, loaded when the first one is; nothing while none is. */
export function PlaceInHand() {
  const id = useTool((state) => state.markId);
  const isPlace = useBook((state) => id !== null && state.supportPlaces.has(id));
  return isPlace ? (
    <Suspense fallback={null}>
      <PlacePanel />
    </Suspense>
  ) : null;
}
