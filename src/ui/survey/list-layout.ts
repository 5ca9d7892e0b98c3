import type { SiteRow } from './site-rows.ts';

/** A row of the list, pixels: of three lines for a thumb, of two where a mouse points. */
export const ROW_PX = 60;
export const TIGHT_ROW_PX = 42;
/** The name of a road above its sites, pixels. */
export const HEAD_PX = 30;

/** Sites of one road that stand together: rows `first` to `end` of the list, the last not among them. */
export interface RoadGroup {
  readonly road: string | null;
  readonly first: number;
  readonly end: number;
  /** Where its name stands, pixels from the list's top. */
  readonly topPx: number;
}

/** Where everything of the list stands, pixels from its top. */
export interface ListLayout {
  /** Of each row, and at last where the list ends. */
  readonly tops: readonly number[];
  readonly groups: readonly RoadGroup[];
}

/** Rows one under the other; `byRoad` puts the name of each road above its sites, which stand together already. */
export function listLayout(rows: readonly SiteRow[], byRoad: boolean, rowPx = ROW_PX): ListLayout {
  const tops: number[] = [];
  const groups: { road: string | null; first: number; end: number; topPx: number }[] = [];
  let top = 0;
  rows.forEach(({ site: { roadName } }, i) => {
    const last = groups.at(-1);
    if (byRoad && (!last || last.road !== roadName)) {
      groups.push({ road: roadName, first: i, end: i + 1, topPx: top });
      top += HEAD_PX;
    } else if (last) last.end = i + 1;
    tops.push(top);
    top += rowPx;
  });
  return { tops: [...tops, top], groups };
}
