import type { PlanVector } from '../../rigging/index.ts';
import { strip } from '../footprint.ts';
import { laneUse } from '../lanes.ts';
import { type AnchorLoad, bothLoads } from './anchor-load.ts';
import { ownBelayM } from './belay-place.ts';
import { belaysBeside, belaysFor } from './belays-for.ts';
import { type Bend, bendGrid } from './bends.ts';
import type { BelayPlace, Candidate } from './candidate.ts';
import { chooseSystem } from './choose-system.ts';
import { MARK_SHORT_M } from './corridor.ts';
import type { Hope } from './hope.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';
import { minutesOf } from './minutes-of.ts';
import { bitCount, bitsBetween, laneBits, trafficPast } from './people-there.ts';
import { mayTakePlace } from './prospect.ts';
import type { PullBase } from './pull-base.ts';
import { holdCounts } from './rank.ts';
import { rankKeyOf } from './rank-key.ts';
import type { Search } from './search.ts';
import type { Stand } from './stands.ts';
import { teamRoomM } from './team-room.ts';
import { type NearestBends, type TurnTie, tieFits, turnTies } from './turn-tie.ts';
import { bodiesClear, corridorClear } from './turned-clear.ts';
import { addBentLoad, heldLoad, mainLoad } from './turned-load.ts';

/** An anchor faces its rope within 45°. */
const FACES = Math.SQRT1_2;
const LEAST_FIELD_M = 3.5;

/**
 * Seeks turned hauls with a change of direction on one of `turns` and the anchor on one of `anchors`, one way along the road, over
 * every bend that a tie fits.
 *
 * @param wide bends wide of the descent's line, instead of those near it
 */
export function searchTurned(
  search: Search,
  turns: readonly Stand[],
  anchors: readonly Stand[],
  along: -1 | 1,
  wide: boolean,
): void {
  const { frame, means } = search;
  searchBends(search, bendGrid(frame, along, means.rates.pulleyEfficiency, wide), turns, anchors, along);
}

/** The same over some bends. */
export function searchBends(
  search: Search,
  bends: readonly Bend[],
  turns: readonly Stand[],
  anchors: readonly Stand[],
  along: -1 | 1,
): void {
  const { edge } = search.frame;
  const near = turns.filter(({ tie }) => Math.hypot(tie.x - edge.x, tie.y - edge.y) < NEAR_M);
  const far = anchors.filter(({ alongM }) => alongM * along > LEAST_FIELD_M - 1);
  const nearest: NearestBends = new Map();
  for (const bend of bends) {
    const ties = turnTies(bend, near, nearest);
    search.trace.bends += ties.length;
    if (ties.length > 0) fromBend(search, bend, ties, along, far);
  }
}

/** No attachment farther from the edge reaches a bend by its tie. */
const NEAR_M = 6 + LAYOUT_LIMITS.tieMostM;

/** A bend under search: what every pair of tie and anchor has in common. */
interface BendSearch {
  readonly bend: Bend;
  readonly along: -1 | 1;
  readonly base: PullBase;
  readonly contacts: Candidate['contacts'];
}

/** An anchor seen from a bend: field, unit vector towards it, the lanes (bits) that it and the corridor surely take, its load. */
interface Seen {
  readonly anchor: Stand;
  readonly fieldM: number;
  readonly ux: number;
  readonly uy: number;
  readonly lanes: number;
  readonly load: AnchorLoad;
  /** Arrival of the later of both apparatus, and the hopes of the field with the least belay, minutes. */
  readonly atMin: number;
  readonly hopes: Hopes;
  /** Once somebody asked: lanes (bits) of the corridor, or that it is not clear; clear way for the team, metres. */
  corridor: number | null;
  roomM: number | null;
}

const BLOCKED = -1;

type Hopes = Readonly<Record<'rank' | 'resets', Hope | null>>;

/** A belay for a tie, with what lies on turn and belay whatever the anchor. */
interface TieBelay {
  readonly place: BelayPlace;
  readonly held: AnchorLoad;
}

function fromBend(
  search: Search,
  bend: Bend,
  ties: readonly TurnTie[],
  along: -1 | 1,
  anchors: readonly Stand[],
): void {
  const { road } = search.frame;
  const efficiency = search.means.rates.pulleyEfficiency;
  const { base, contacts } = search.baseAt('turned', bend.toEdgeM, bend.offLineDeg);
  const one = { bend, along, base, contacts };
  const seen = anchorsSeen(search, one, anchors, ties[0].turn.unit?.atMin ?? 0);
  if (seen.length === 0) return;
  const onward = { bend, anchor: { x: bend.x + along * road.x, y: bend.y + along * road.y } };
  for (const tie of ties) {
    const { turn } = tie;
    let belays: readonly TieBelay[] | null = null;
    for (const far of seen) {
      const { anchor, ux, uy } = far;
      if (anchor.tie.id === turn.tie.id || !tieFits(tie, bend, ux, uy, efficiency)) continue;
      belays ??= belaysFor(search, turn, 'turned', bend.toEdgeM, base, onward).map(
        (place): TieBelay => ({ place, held: heldLoad(search, turn, bend, place, base) }),
      );
      for (const belay of belaysBeside(belays, turn, bend, anchor)) tryPair(search, one, turn, far, belay);
    }
  }
}

/** The anchors whose field may still bring something, that face the bend and to which a corridor may run. */
function anchorsSeen(search: Search, one: BendSearch, anchors: readonly Stand[], turnAtMin: number): Seen[] {
  const { mostFieldM, laneGrid, frame, marks, pinnedBelays } = search;
  const { bend, along, base } = one;
  const { road } = frame;
  const alone = marks.length > 0 || pinnedBelays !== null;
  const leastRunM = alone ? 0 : ownBelayM(bend.toEdgeM);
  const way = { x: along * road.x, y: along * road.y };
  const seen: Seen[] = [];
  for (const anchor of anchors) {
    const { tie, walk } = anchor;
    const dx = tie.x - bend.x;
    const dy = tie.y - bend.y;
    const fieldM = Math.sqrt(dx * dx + dy * dy);
    if (fieldM < LEAST_FIELD_M || fieldM > mostFieldM) continue;
    const ux = dx / fieldM;
    const uy = dy / fieldM;
    if (tie.spot !== null && -(ux * tie.outX + uy * tie.outY) < FACES) continue;
    const element = tie.spot === null ? anchor.element - along * MARK_SHORT_M : anchor.element;
    if (!inSight(bend, walk.x - bend.x, walk.y - bend.y, way, element, along)) continue;
    search.trace.inSight++;
    const across = tie.spot === null ? bend.asideM : anchor.asideM;
    const lanes =
      anchor.lanes |
      bitsBetween(
        laneGrid,
        Math.min(bend.asideM, across) - CORRIDOR_SURE_M,
        Math.max(bend.asideM, across) + CORRIDOR_SURE_M,
      );
    const atMin = Math.max(turnAtMin, anchor.unit?.atMin ?? 0);
    const hopes = hopesOf(search, base, fieldM, leastRunM, atMin);
    const load = mainLoad(search, anchor, base, ux, uy);
    if (isOpen(search, one, hopes, lanes, load))
      seen.push({ anchor, fieldM, ux, uy, lanes, load, atMin, hopes, corridor: null, roomM: null });
  }
  // What holds best first: the sooner it is found, the more is left out.
  return holdCounts(frame.grade) ? seen.sort((a, b) => b.load.holdFactor - a.load.holdFactor) : seen;
}

/** A corridor reaches at least this far to either side of its ends across the road, however it slants, metres. */
const CORRIDOR_SURE_M = 0.7;

const hopesOf = ({ hopeOf }: Search, base: PullBase, fieldM: number, runM: number, atMin: number): Hopes => ({
  rank: hopeOf(base, fieldM, runM, atMin, 'rank'),
  resets: hopeOf(base, fieldM, runM, atMin, 'resets'),
});

/** True where some hope of a field is left on so many lanes (bits). */
function isOpen(search: Search, { along, base }: BendSearch, { rank, resets }: Hopes, lanes: number, load: AnchorLoad) {
  const podium = search.podiums.turned[along];
  const fewest = bitCount(lanes);
  return (
    (rank !== null && mayTakePlace(search, podium, rank, base, along, fewest, load)) ||
    (resets !== null && mayTakePlace(search, podium, resets, base, along, fewest, load))
  );
}

const BY = ['rank', 'resets'] as const;

function inSight(bend: Bend, dx: number, dy: number, way: PlanVector, element: number, along: -1 | 1): boolean {
  const { from, to } = bend.sight();
  const i = along > 0 ? Math.floor(element) : Math.ceil(element);
  const slope = (way.x * dy - way.y * dx) / (way.x * dx + way.y * dy);
  return slope >= from[i] && slope <= to[i];
}

/** Works a pair of tie and anchor out as far as it can still take a place, cheapest tests first. */
function tryPair(search: Search, one: BendSearch, turn: Stand, far: Seen, { place: belay, held }: TieBelay): void {
  const { bend, along, base } = one;
  const lanes = turn.lanes | far.lanes | belay.lanes;
  const load = bothLoads(held, far.load);
  if (!isOpen(search, one, far.hopes, lanes, load)) return;
  addBentLoad(load, search, turn, belay, base, bend.towardEdge, { x: far.ux, y: far.uy });
  const atMin = Math.max(far.atMin, belay.atMin);
  for (const by of BY) {
    const hope = search.hopeOf(base, far.fieldM, belay.runM, atMin, by);
    if (hope === null || !mayTakePlace(search, search.podiums.turned[along], hope, base, along, bitCount(lanes), load))
      continue;
    workPair(search, one, turn, far, belay, load, lanes, atMin, by);
  }
}

function workPair(
  search: Search,
  { bend, along, base, contacts }: BendSearch,
  turn: Stand,
  far: Seen,
  belay: BelayPlace,
  load: AnchorLoad,
  lanesAtLeast: number,
  apparatusAtMin: number,
  by: 'rank' | 'resets',
): void {
  const { frame, means } = search;
  const { bench, ground } = frame;
  const { anchor, fieldM } = far;
  const { tie } = anchor;
  const podium = search.podiums.turned[along];
  const corridor = corridorOf(search, turn, bend, far);
  if (corridor === BLOCKED) return;
  const lanesTaken = lanesAtLeast | corridor;
  const lanes = bitCount(lanesTaken);
  const { othersCount } = trafficPast(ground.traits, lanesTaken);
  // With the lanes comes who holds the traffic, and with that the systems that the crew can pull.
  const nearer = search.hopeOf(base, fieldM, belay.runM, apparatusAtMin, by, othersCount);
  if (nearer === null || !mayTakePlace(search, podium, nearer, base, along, lanes, load)) return;
  if (!bodiesClear(frame, turn.tie, bend, tie)) return;
  const choice = chooseSystem(
    {
      ...{ base, fieldM, ropeFieldM: fieldM, belayRunM: belay.runM, handTurns: 0 },
      othersCount,
      rigRopesM: search.rigRopesM('turned', apparatusAtMin),
    },
    means,
    by,
  );
  if (choice === null) return;
  const places = { anchor: tie, turn: { tie: turn.tie }, fieldM, base, choice };
  const known = rankKeyOf(frame, choice, lanes, load, 'turned', nearer.minutes);
  if (!podium.admits(known, places)) return;
  far.roomM ??= teamRoomM(bench, bend, { x: far.ux, y: far.uy }, bend.element, fieldM, tie.spot);
  const { roomM } = far;
  const candidate: Omit<Candidate, 'key'> = {
    ...{ kind: 'turned', along, anchor: tie, turn: { tie: turn.tie, bend }, belay, handTurn: null },
    ...{ base, contacts, fieldM, roomM, choice, by, lanesTaken, apparatusAtMin },
  };
  const minutes = minutesOf(candidate, means, ground.traits).total ?? Number.POSITIVE_INFINITY;
  podium.offer({ ...candidate, key: rankKeyOf(frame, choice, lanes, load, 'turned', minutes) });
}

/** Lanes of the corridor to an anchor, as bits, or that it is not clear; the same for every apparatus at the turn. */
function corridorOf({ frame }: Search, turn: Stand, bend: Bend, far: Seen): number {
  if (far.corridor !== null && turn.tie.spot !== null) return far.corridor;
  const { anchor } = far;
  const ground = strip(bend.x, bend.y, anchor.tie.x, anchor.tie.y, LAYOUT_LIMITS.corridorM);
  const corridor = corridorClear(frame, turn.tie, bend, anchor, bend.element)
    ? laneBits(laneUse(frame.bench, frame.ground.traits, ground, Math.floor(anchor.element)).taken)
    : BLOCKED;
  if (turn.tie.spot !== null) far.corridor = corridor;
  return corridor;
}
