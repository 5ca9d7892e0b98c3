import type { AngleClass } from '../../book/index.ts';

const steep = {
  ground: 'M3.1 8.4H8L19.47 18.03',
  fill: 'M3.1 8.4H8L19.47 18.03A9.6 9.6 0 0 1 3.1 8.4Z',
  hatch: 'M4 12l7 8M4 9.5l11 11M8 10l9 9.5M12 12.4l6 6.2',
};

/** Paths of a class's ring in a 24-unit box: its ground at 20°, 40° or 66°, what lies under it, and its hatch. */
export function sheetRing(look: AngleClass | 'undecided' | null): { ground: string; fill: string; hatch: string } {
  switch (look) {
    case 'low':
      return { ground: 'M2.66 9.8H8L21.24 14.62', fill: 'M2.66 9.8H8L21.24 14.62A9.6 9.6 0 0 1 2.66 9.8Z', hatch: '' };
    case 'steep':
      return steep;
    case 'high':
      return { ground: 'M3.8 7H10.2L16.26 20.6', fill: 'M3.8 7H10.2L16.26 20.6A9.6 9.6 0 0 1 3.8 7Z', hatch: '' };
    case 'undecided':
      return { ...steep, hatch: `${steep.hatch}M4.2 13.5L8 9.6M5.6 17L11.4 11.2M8.6 19.8L14.6 13.8M12.4 21L17.4 16` };
    default:
      return { ground: '', fill: '', hatch: '' };
  }
}
