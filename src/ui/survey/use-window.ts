import { type RefObject, useEffect, useState } from 'react';

/** Rows beyond the view that are kept ready, to each side. */
const SPARE = 6;
/** Rows before anything has been measured. */
const FIRST_ROWS = 40;

/**
 * The part of a list that can be seen: its first row and the row after its last. `tops` says where each row begins and the last ends, pixels. What scrolls may be the
 * box itself, the page about it or both: rows count as seen where both the box and the screen show them.
 */
export function useWindow(box: RefObject<HTMLElement | null>, tops: readonly number[]): [number, number] {
  const count = tops.length - 1;
  const [range, setRange] = useState<[number, number]>([0, FIRST_ROWS]);
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const measure = (): void => {
      const { top, bottom } = element.getBoundingClientRect();
      const listTop = top - element.scrollTop;
      const first = Math.max(0, rowAt(tops, Math.max(top, 0) - listTop) - SPARE);
      const last = Math.max(first, rowAt(tops, Math.min(bottom, innerHeight) - listTop) + 1 + SPARE);
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
  }, [box, tops]);
  return [Math.min(range[0], count), Math.min(count, range[1])];
}

/** The row that a height falls in; the first above all, the last below. */
function rowAt(tops: readonly number[], px: number): number {
  let low = 0;
  let high = tops.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (tops[middle]! <= px) low = middle;
    else high = middle;
  }
  return low;
}
