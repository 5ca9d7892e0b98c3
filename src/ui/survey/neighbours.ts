import type { SiteRecord } from '../../book/index.ts';
import type { LonLat } from '../../geo/index.ts';
import type { ReadsState } from '../state/index.ts';

/** A site beside another one along the same road. */
export interface Neighbour {
  readonly id: string;
  readonly name: string;
  /** Metres along the road between the two. */
  readonly alongM: number;
  /** True bearing toward it as the crow flies, degrees; null where both stand at one place. */
  readonly towardDeg: number | null;
}

/** The last site before a site along its road, and the first after it; null where there is none, or where that is not known yet. */
export interface Neighbours {
  readonly before: Neighbour | null;
  readonly after: Neighbour | null;
}

/** Sites of equal place are in the order of their ids, so that going on never turns in a circle. */
export function neighboursOf(
  id: string,
  sites: ReadonlyMap<string, SiteRecord>,
  along: ReadsState['along'],
): Neighbours {
  const site = sites.get(id);
  const here = along.get(id);
  if (!site || !here) return { before: null, after: null };
  let before: { site: SiteRecord; m: number } | null = null;
  let after: { site: SiteRecord; m: number } | null = null;
  for (const other of sites.values()) {
    const place = along.get(other.id);
    if (other.id === id || !place || place.road !== here.road) continue;
    const one = { site: other, m: place.m };
    if (comesFirst(one, { site, m: here.m })) {
      if (!before || comesFirst(before, one)) before = one;
    } else if (!after || comesFirst(one, after)) after = one;
  }
  const told = (one: { site: SiteRecord; m: number } | null): Neighbour | null =>
    one && {
      id: one.site.id,
      name: one.site.name,
      alongM: Math.abs(one.m - here.m),
      towardDeg: bearing(site.place, one.site.place),
    };
  return { before: told(before), after: told(after) };
}

type OnRoad = { readonly site: SiteRecord; readonly m: number };

const comesFirst = (a: OnRoad, b: OnRoad): boolean => a.m < b.m || (a.m === b.m && a.site.id < b.site.id);

/** Good to a degree over the length of a road: it becomes a word of eight. */
function bearing(from: LonLat, to: LonLat): number | null {
  const east = (to.lon - from.lon) * Math.cos((from.lat * Math.PI) / 180);
  const north = to.lat - from.lat;
  return east === 0 && north === 0 ? null : (Math.atan2(east, north) * 180) / Math.PI;
}
