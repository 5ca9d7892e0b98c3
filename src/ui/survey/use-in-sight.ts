import { type RefObject, useLayoutEffect, useRef } from 'react';

/** For a panel that opens far down a page: brings it into sight when it opens, and again for every other `what`. */
export function useInSight<E extends HTMLElement>(what: string | null): RefObject<E | null> {
  const panel = useRef<E>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another thing in hand is another panel to be seen.
  useLayoutEffect(() => {
    panel.current?.scrollIntoView({ block: 'nearest' });
  }, [what]);
  return panel;
}
