import type { PointM } from '../../geo/index.ts';
import type { Bend } from './bends.ts';
import { insideUsable, MARK_SHORT_M } from './corridor.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';
import type { Search } from './search.ts';
import { outsideTriangle, ropeClear, spotsApart } from './spots-apart.ts';
import type { Stand } from './stands.ts';
import type { TiePlace } from './tie-places.ts';

/** True where parked apparatus of a turned haul stands apart, off both legs of the rope and out of its angle. */
export function bodiesClear({ edge }: Search['frame'], turn: TiePlace, bend: PointM, anchor: TiePlace): boolean {
  if (turn.spot !== null) {
    if (anchor.spot !== null && !spotsApart(turn.spot, anchor.spot)) return false;
    if (!ropeClear(turn.spot, bend, anchor, false) || !ropeClear(turn.spot, edge, bend, false)) return false;
    if (!outsideTriangle(turn.spot, edge, bend, anchor)) return false;
  }
  return (
    anchor.spot === null ||
    (ropeClear(anchor.spot, bend, anchor, true) && outsideTriangle(anchor.spot, edge, bend, anchor))
  );
}

/** True where the corridor of a turned haul lies inside the usable offsets. */
export function corridorInside({ bench }: Search['frame'], bend: Bend, { tie, walk }: Stand): boolean {
  // The field of a mark ends its clearance short of it.
  const share = tie.spot === null ? 1 - MARK_SHORT_M / Math.hypot(walk.x - bend.x, walk.y - bend.y) : 1;
  const end = { x: bend.x + (walk.x - bend.x) * share, y: bend.y + (walk.y - bend.y) * share };
  return insideUsable(bench, bend.x, bend.y, end.x, end.y, LAYOUT_LIMITS.corridorM, bend.element);
}
