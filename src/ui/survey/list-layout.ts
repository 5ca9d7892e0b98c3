import type { SiteRow } from './site-rows.ts';

/** A row of the list, pixels: of three lines for a thumb, of two where a mouse points, of three small ones where that says more. */
export const ROW_PX = 60;
export const TIGHT_ROW_PX = 42;
export const TIGHT_LONG_ROW_PX = 58;
/** The name of a road above its sites, pixels. */
export const HEAD_PX = 30;

/** Sites of one road that stand together: rows `first` to `end` of the list, the last not among them. */
export interface RoadGroup {
  readonly road: string | null;
  readonly first: number;
  readonly end: number;
  /** Where its name stands, pixels from the list's top. */
  readonly topPx: number;
  /** Where its last row ends. */
  readonly endPx: number;
}

/** How high each row is, pixels. */
export type RowHeight = (row: SiteRow) => number;

/** Class, what to plan as, angle, rope and resets of an undecided site do not fit in one line beside its road. */
export const isLong = ({ read }: SiteRow): boolean =>
  read !== null && 'className' in read && read.className === 'undecided';

export const thumbHeight: RowHeight = () => ROW_PX;
export const tightHeight: RowHeight = (row) => (isLong(row) ? TIGHT_LONG_ROW_PX : TIGHT_ROW_PX);

/** Where everything of the list stands, pixels from its top. */
export interface ListLayout {
  /** Of each row, and at last where the list ends. */
  readonly tops: readonly number[];
  readonly groups: readonly RoadGroup[];
}

/** Rows one under the other; `byRoad` puts the name of each road above its sites, which stand together already. */
export function listLayout(rows: readonly SiteRow[], byRoad: boolean, height: RowHeight = thumbHeight): ListLayout {
  const tops: number[] = [];
  const groups: { road: string | null; first: number; end: number; topPx: number; endPx: number }[] = [];
  let top = 0;
  rows.forEach((row, i) => {
    const { roadName } = row.site;
    if (byRoad && (groups.length === 0 || groups.at(-1)!.road !== roadName)) {
      groups.push({ road: roadName, first: i, end: i, topPx: top, endPx: top });
      top += HEAD_PX;
    }
    tops.push(top);
    top += height(row);
    const group = groups.at(-1);
    if (group) Object.assign(group, { end: i + 1, endPx: top });
  });
  return { tops: [...tops, top], groups };
}
