import { useSyncExternalStore } from 'react';

const query = '(min-width: 1100px) and (not (pointer: coarse))';

/** True where a mouse points, on a page wide enough to be a desk's: rows need no room for a thumb. */
export const useTight = (): boolean =>
  useSyncExternalStore(
    (changed) => {
      const list = matchMedia(query);
      list.addEventListener('change', changed);
      return () => list.removeEventListener('change', changed);
    },
    () => matchMedia(query).matches,
  );
