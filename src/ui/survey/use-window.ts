import { type RefObject, useEffect, useState } from 'react';

/** Rows beyond the view that are kept ready, to each side. */
const SPARE = 6;

/** The part of a list of rows of one height that is in view: its first row and the row after its last. */
export function useWindow(box: RefObject<HTMLElement | null>, count: number, rowPx: number): [number, number] {
  const [range, setRange] = useState<[number, number]>([0, 40]);
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const measure = (): void => {
      const first = Math.max(0, Math.floor(element.scrollTop / rowPx) - SPARE);
      const last = Math.ceil((element.scrollTop + element.clientHeight) / rowPx) + SPARE;
      setRange((before) => (before[0] === first && before[1] === last ? before : [first, last]));
    };
    measure();
    element.addEventListener('scroll', measure, { passive: true });
    const watch = new ResizeObserver(measure);
    watch.observe(element);
    return () => {
      element.removeEventListener('scroll', measure);
      watch.disconnect();
    };
  }, [box, rowPx]);
  return [range[0], Math.min(count, range[1])];
}
