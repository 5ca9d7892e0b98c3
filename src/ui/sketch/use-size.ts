import { type RefObject, useEffect, useState } from 'react';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** The size of an element in whole pixels, kept in step with it; null before it has one. */
export function useSize(element: RefObject<HTMLElement | null>): Size | null {
  const [size, setSize] = useState<Size | null>(null);
  useEffect(() => {
    if (!element.current) return;
    const watch = new ResizeObserver(([entry]) => {
      const { width, height } = entry.contentRect;
      if (width > 0 && height > 0) setSize({ width: Math.round(width), height: Math.round(height) });
    });
    watch.observe(element.current);
    return () => watch.disconnect();
  }, [element]);
  return size;
}
