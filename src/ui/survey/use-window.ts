import { type RefObject, useEffect, useState } from 'react';

/** Rows beyond the view that are kept ready, to each side. */
const SPARE = 6;
/** Rows before anything has been measured. */
const FIRST_ROWS = 40;

/**
 * The part of a list of rows of one height that can be seen: its first row and the row after its last. What scrolls may be the
 * box itself, the page about it or both: rows count as seen where both the box and the screen show them.
 */
export function useWindow(box: RefObject<HTMLElement | null>, count: number, rowPx: number): [number, number] {
  const [range, setRange] = useState<[number, number]>([0, FIRST_ROWS]);
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const measure = (): void => {
      const { top, bottom } = element.getBoundingClientRect();
      const listTop = top - element.scrollTop;
      const first = Math.max(0, Math.floor((Math.max(top, 0) - listTop) / rowPx) - SPARE);
      const last = Math.max(first, Math.ceil((Math.min(bottom, innerHeight) - listTop) / rowPx) + SPARE);
      setRange((before) => (before[0] === first && before[1] === last ? before : [first, last]));
    };
    measure();
    // Scroll events of whatever lies about the box are heard on their way down.
    document.addEventListener('scroll', measure, { passive: true, capture: true });
    const watch = new ResizeObserver(measure);
    watch.observe(element);
    watch.observe(document.documentElement);
    return () => {
      document.removeEventListener('scroll', measure, { capture: true });
      watch.disconnect();
    };
  }, [box, rowPx]);
  return [Math.min(range[0], count), Math.min(count, range[1])];
}
