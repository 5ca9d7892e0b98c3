import { useSyncExternalStore } from 'react';
import { isAwaited, usePlace, useSketch, useStudy, useTool } from '../state/index.ts';

/** What a study's page shows: the map or the plan view over the profile, or plan view and profile as one drawing. */
export type Upper = 'map' | 'plan' | 'pair';

const query = '(min-width: 1100px)';

const subscribe = (changed: () => void): (() => void) => {
  const list = matchMedia(query);
  list.addEventListener('change', changed);
  return () => list.removeEventListener('change', changed);
};

/**
 * As somebody chose; until then plan view and profile where a desk has room for a site of the book, and the map where a point is still
 * being placed. A tool in hand needs the map, and a check has the profile alone under its work.
 */
export function useUpper(): Upper {
  const hasRoom = useSyncExternalStore(subscribe, () => matchMedia(query).matches);
  const chosen = useSketch((state) => state.upper);
  const isStudy = usePlace(({ screen }) => screen === 'study');
  const isSite = usePlace(({ subject }) => subject?.kind === 'site');
  const isThere = useStudy((state) => isAwaited(state) || Boolean(state.answer?.study.bench));
  const isArmed = useTool(({ tool }) => tool !== 'look');
  if (!isStudy || isArmed) return 'map';
  const upper = chosen ?? (hasRoom && isSite && isThere ? 'plan' : 'map');
  return upper === 'plan' && hasRoom ? 'pair' : upper;
}
