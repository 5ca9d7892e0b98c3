import { strip } from '../footprint.ts';
import { laneUse } from '../lanes.ts';
import type { Bend } from './bends.ts';
import { BLOCKED, type Corridor, marksInWay } from './corridor.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';
import { laneBits } from './people-there.ts';
import type { Search } from './search.ts';
import type { Stand } from './stands.ts';
import { teamRoomM } from './team-room.ts';
import { corridorInside } from './turned-clear.ts';

const outside: Corridor = { lanes: BLOCKED, inWay: [], roomM: null };

/** The corridor from a bend to an anchor as found before; null where nobody asked. */
export const knownCorridor = ({ corridors }: Search, bend: Bend, anchor: Stand): Corridor | null =>
  corridors.get(bend)?.get(anchor) ?? null;

/** The corridor from a bend to an anchor, worked out once for all that may hold the bend. */
export function corridorTo(search: Search, bend: Bend, anchor: Stand): Corridor {
  const known = knownCorridor(search, bend, anchor);
  if (known) return known;
  const ofBend = search.corridors.get(bend) ?? new Map<Stand, Corridor>();
  search.corridors.set(bend, ofBend);
  const corridor = workOut(search, bend, anchor);
  ofBend.set(anchor, corridor);
  return corridor;
}

function workOut({ frame }: Search, bend: Bend, anchor: Stand): Corridor {
  if (!corridorInside(frame, bend, anchor)) return outside;
  const { bench, ground } = frame;
  const { tie, element } = anchor;
  const way = [bend.x, bend.y, tie.x, tie.y] as const;
  const use = laneUse(bench, ground.traits, strip(...way, LAYOUT_LIMITS.corridorM), Math.floor(element));
  const inWay = marksInWay(ground.hazards, ...way, [tie.id]).map(({ id }) => id);
  return { lanes: laneBits(use.taken), inWay, roomM: null };
}

/** Clear way for the team along a field of a corridor, (ux, uy) the unit vector towards the anchor, metres. */
export function roomOf(
  { frame }: Search,
  bend: Bend,
  corridor: Corridor,
  far: { readonly anchor: Stand; readonly fieldM: number; readonly ux: number; readonly uy: number },
): number {
  const way = { x: far.ux, y: far.uy };
  corridor.roomM ??= teamRoomM(frame.bench, bend, way, far.anchor.element, far.fieldM, far.anchor.tie.spot);
  return corridor.roomM;
}
