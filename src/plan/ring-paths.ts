import type { AngleClass } from '../book/index.ts';

/** Paths of a ring in its 24-unit box: the ground's line, what lies under it, and its hatch (empty where there is none). */
export interface RingPaths {
  readonly ground: string;
  readonly fill: string;
  readonly hatch: string;
}

/** The ring itself: middle 12, 12. */
export const ringRadius = 9.6;

/** Level ground and where it breaks, then down to the ring at the class's own slope: 20°, 40°, 66°. */
const grounds = {
  low: { from: '2.66 9.8', rest: 'H8L21.24 14.62' },
  steep: { from: '3.1 8.4', rest: 'H8L19.47 18.03' },
  high: { from: '3.8 7', rest: 'H10.2L16.26 20.6' },
} as const;
/** Hatching cut by hand to the steep ground. */
const falling = 'M4 12l7 8M4 9.5l11 11M8 10l9 9.5M12 12.4l6 6.2';
const rising = 'M4.2 13.5L8 9.6M5.6 17L11.4 11.2M8.6 19.8L14.6 13.8M12.4 21L17.4 16';

/** A class's ring: cut by the ground at the class's own slope, crossed on the steep one where undecided, empty where not worked out. */
export function ringPaths(look: AngleClass | 'undecided' | null): RingPaths {
  if (look === null) return { ground: '', fill: '', hatch: '' };
  const { from, rest } = grounds[look === 'undecided' ? 'steep' : look];
  const ground = `M${from}${rest}`;
  const fill = `${ground}A${ringRadius} ${ringRadius} 0 0 1 ${from}Z`;
  return { ground, fill, hatch: look === 'steep' ? falling : look === 'undecided' ? falling + rising : '' };
}
