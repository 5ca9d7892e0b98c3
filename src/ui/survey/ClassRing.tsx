import type { AngleClass } from '../../book/index.ts';

/** Level ground and its break, then down to the ring at the class's own slope: 20°, 40°, 66°. */
const grounds = {
  low: 'M2.66 9.8H8L21.24 14.62',
  steep: 'M3.1 8.4H8L19.47 18.03',
  high: 'M3.8 7H10.2L16.26 20.6',
  undecided: 'M3.1 8.4H8L19.47 18.03',
} as const;
const lower = {
  low: 'A9.6 9.6 0 0 1 2.66 9.8Z',
  steep: 'A9.6 9.6 0 0 1 3.1 8.4Z',
  high: 'A9.6 9.6 0 0 1 3.8 7Z',
  undecided: 'A9.6 9.6 0 0 1 3.1 8.4Z',
} as const;

/** A site's ring, cut by the ground at its class's own slope; empty where nothing has been worked out. Its word stands beside it. */
export function ClassRing({ look }: { readonly look: AngleClass | 'undecided' | null }) {
  return (
    <svg className={`class-ring ${look ?? 'unread'}`} viewBox="0 0 24 24" aria-hidden="true">
      <circle className="ring-ground" cx="12" cy="12" r="9.6" />
      {look && <path className="ring-fill" d={`${grounds[look]}${lower[look]}`} />}
      {look && hatched(look).map((d) => <path key={d} className="ring-hatch" d={d} />)}
      {look && <path className="ring-line" d={grounds[look]} />}
      <circle className="ring" cx="12" cy="12" r="9.6" />
    </svg>
  );
}

/** Hatching of the ground by class, cut by hand to the ring. */
function hatched(look: AngleClass | 'undecided'): string[] {
  const falling = 'M4 12l7 8M4 9.5l11 11M8 10l9 9.5M12 12.4l6 6.2';
  const rising = 'M4.2 13.5L8 9.6M5.6 17L11.4 11.2M8.6 19.8L14.6 13.8M12.4 21L17.4 16';
  if (look === 'steep') return [falling];
  return look === 'undecided' ? [falling, rising] : [];
}
