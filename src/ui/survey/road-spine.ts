import type { SiteRow } from './site-rows.ts';

/** A road as a straight line beside its sites, pixels from the top of the first row. */
export interface Spine {
  /** Where each site lies along the road; null where that is not known. */
  readonly dots: readonly (number | null)[];
  /** Marks at whole and half miles by the road's own markers, the whole ones with their number; none where it has none. */
  readonly ticks: readonly { readonly px: number; readonly mile: number | null }[];
}

/** The line ends this far from the group's ends, pixels. */
const END_PX = 6;
/** Of the road shown, the part before the first site and after the last. */
const SPARE = 0.06;
/** A road with one site, or with all at one place, is shown this far to each side of it: metres, a quarter of a mile. */
const AROUND_M = 402;

/**
 * How sites of one road, given in its order, lie along it on a line of `lengthPx`: distances on the line are in proportion to those along the road, so that
 * sites crowd where they crowd there. Ticks stand between sites that have a mile, in proportion between their miles.
 */
export function roadSpine(rows: readonly SiteRow[], lengthPx: number): Spine {
  const known = rows.flatMap(({ along }) => along ?? []);
  if (known.length === 0) return { dots: rows.map(() => null), ticks: [] };
  const low = known[0]!.m;
  const high = known.at(-1)!.m;
  const spare = high > low ? SPARE * (high - low) : AROUND_M;
  const pxOf = (m: number): number => END_PX + ((m - low + spare) / (high - low + 2 * spare)) * (lengthPx - 2 * END_PX);
  return {
    dots: rows.map(({ along }) => along && pxOf(along.m)),
    ticks: halfMiles(known).map(({ m, mile }) => ({ px: pxOf(m), mile: Number.isInteger(mile) ? mile : null })),
  };
}

type Along = NonNullable<SiteRow['along']>;

/** Whole and half miles between neighbouring sites that have a mile, with the metres along the road between theirs. */
function halfMiles(known: readonly Along[]): { m: number; mile: number }[] {
  const found = new Map<number, { m: number; mile: number }>();
  const posted = known.filter(({ mile }) => mile !== null);
  posted.slice(1).forEach((to, i) => {
    const from = posted[i]!;
    const [a, b] = [from.mile!, to.mile!];
    for (let half = Math.ceil(2 * Math.min(a, b)); half <= 2 * Math.max(a, b); half++) {
      const mile = half / 2;
      found.set(mile, { m: a === b ? from.m : from.m + ((mile - a) / (b - a)) * (to.m - from.m), mile });
    }
  });
  return [...found.values()];
}
