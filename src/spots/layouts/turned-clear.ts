import type { Bend } from './bends.ts';
import { clearOfMarks, insideUsable, MARK_SHORT_M } from './corridor.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';
import type { Search } from './search.ts';
import { outsideTriangle, ropeClear, spotsApart } from './spots-apart.ts';
import type { Stand } from './stands.ts';

/** Exact tests of the ground that a turned haul takes: corridor, marks in it, apparatus out of the ropes and of the angle. */
export function isClear(
  { frame }: Pick<Search, 'frame'>,
  turn: Stand,
  bend: Bend,
  { tie, walk }: Stand,
  element: number,
): boolean {
  const { bench, ground, edge } = frame;
  const spots = [turn.tie.spot, tie.spot].filter((spot) => spot !== null);
  if (spots.length === 2 && !spotsApart(spots[0], spots[1])) return false;
  if (turn.tie.spot !== null && !ropeClear(turn.tie.spot, bend, tie, false)) return false;
  if (turn.tie.spot !== null && !ropeClear(turn.tie.spot, edge, bend, false)) return false;
  if (tie.spot !== null && !ropeClear(tie.spot, bend, tie, true)) return false;
  if (!spots.every((spot) => outsideTriangle(spot, edge, bend, tie))) return false;
  // The field of a mark ends its clearance short of it.
  const share = tie.spot === null ? 1 - MARK_SHORT_M / Math.hypot(walk.x - bend.x, walk.y - bend.y) : 1;
  const end = { x: bend.x + (walk.x - bend.x) * share, y: bend.y + (walk.y - bend.y) * share };
  if (!insideUsable(bench, bend.x, bend.y, end.x, end.y, LAYOUT_LIMITS.corridorM, element)) return false;
  return clearOfMarks(ground.hazards, bend.x, bend.y, tie.x, tie.y, [turn.tie.id, tie.id]);
}
