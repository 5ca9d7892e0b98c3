import { strip } from '../footprint.ts';
import { laneUse } from '../lanes.ts';
import { type AnchorLoad, noLoad, sumOf } from './anchor-load.ts';
import { type BendSearch, BLOCKED, type Exact, type Haul, isOpen, type Seen } from './anchors-seen.ts';
import type { Bend } from './bends.ts';
import type { BelayPlace } from './candidate.ts';
import { chooseSystem, type SystemChoice, sameSystem } from './choose-system.ts';
import { marksInWay } from './corridor.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';
import { minutesOf } from './minutes-of.ts';
import { bitCount, laneBits, trafficPast } from './people-there.ts';
import { levelOf } from './podium.ts';
import { rankKeyOf } from './rank-key.ts';
import type { Search } from './search.ts';
import type { Stand } from './stands.ts';
import { teamRoomM } from './team-room.ts';
import { bodiesClear, corridorInside } from './turned-clear.ts';
import { addBentLoad } from './turned-load.ts';

/** A belay for a tie, with what lies on turn and belay whatever the anchor. */
export interface TieBelay {
  readonly place: BelayPlace;
  readonly held: AnchorLoad;
}

const BY = ['rank', 'resets'] as const;

/** Works a pair of tie and anchor out as far as it can still take a place, cheapest tests first. */
export function tryPair(
  search: Search,
  one: BendSearch,
  turn: Stand,
  far: Seen,
  { place: belay, held }: TieBelay,
): void {
  const { frame, podiums } = search;
  const { bend, along, base } = one;
  const podium = podiums.turned[along];
  if (far.corridor === BLOCKED) return;
  const leastLanes = turn.lanes | far.lanes | belay.lanes;
  sumOf(pairLoad, held, far.load);
  addBentLoad(pairLoad, search, turn, belay, far.bent);
  const atMin = Math.max(far.atMin, belay.atMin);
  if (!isOpen(search, one, search.hopesOf(base, belay.runM, atMin).of(far.fieldM), leastLanes, pairLoad)) return;
  const corridor = corridorOf(search, turn, bend, far);
  if (corridor === BLOCKED) return;
  const lanesTaken = leastLanes | corridor;
  // With the lanes comes who holds the traffic, and with that the systems that the crew can pull.
  const { othersCount } = trafficPast(frame.ground.traits, lanesTaken);
  const nearer = search.hopesOf(base, belay.runM, atMin, othersCount).of(far.fieldM);
  if (!isOpen(search, one, nearer, lanesTaken, pairLoad)) return;
  const haul = haulOf(search, one, far, belay, lanesTaken, atMin);
  for (const by of BY) {
    const exact = haul[by];
    if (exact === null) continue;
    const { choice, minutes } = exact;
    const key = rankKeyOf(frame, choice, bitCount(lanesTaken), pairLoad, 'turned', minutes);
    const places = { anchor: far.anchor.tie, turn: { tie: turn.tie, bend }, fieldM: far.fieldM, base, choice };
    if (!podium.admits(key, levelOf(places))) continue;
    if (!bodiesClear(frame, turn.tie, bend, far.anchor.tie)) return;
    podium.offer({
      ...{ kind: 'turned', along, belay, handTurn: null, ...places },
      ...{ contacts: one.contacts, roomM: haul.roomM, by, lanesTaken, apparatusAtMin: atMin, key },
    });
  }
}

/** The load of the pair in hand; nothing is made for those that lose. */
const pairLoad = noLoad();

/** What a pair comes to exactly, once for all ties that share it. */
function haulOf(
  search: Search,
  { bend, base }: BendSearch,
  far: Seen,
  { runM: belayRunM }: BelayPlace,
  lanesTaken: number,
  atMin: number,
): Haul {
  const { fieldM, hauls } = far;
  const known = hauls.find(
    (haul) => haul.belayRunM === belayRunM && haul.lanesTaken === lanesTaken && haul.atMin === atMin,
  );
  if (known !== undefined) return known;
  const { means, frame } = search;
  const { traits } = frame.ground;
  const { othersCount } = trafficPast(traits, lanesTaken);
  const rope = { ropeFieldM: fieldM, belayRunM, rigRopesM: search.rigRopesM('turned', atMin) };
  const question = { base, fieldM, ...rope, handTurns: 0, othersCount } as const;
  const way = { x: far.ux, y: far.uy };
  far.roomM ??= teamRoomM(frame.bench, bend, way, bend.element, fieldM, far.anchor.tie.spot);
  const { roomM } = far;
  const exact = (choice: SystemChoice): Exact => {
    const timed = { kind: 'turned', base, choice, lanesTaken, apparatusAtMin: atMin, roomM } as const;
    return { choice, minutes: minutesOf(timed, means, traits).total ?? Number.POSITIVE_INFINITY };
  };
  const byRank = chooseSystem(question, means, 'rank');
  const byResets = chooseSystem(question, means, 'resets');
  const rank = byRank && exact(byRank);
  const resets = byResets === null || (byRank !== null && sameSystem(byRank, byResets)) ? null : exact(byResets);
  const haul = { belayRunM, lanesTaken, atMin, roomM, rank, resets };
  hauls.push(haul);
  return haul;
}

/** Lanes of the corridor to an anchor, as bits, or that it is not clear; a mark that holds the bend does not stand in its way. */
function corridorOf({ frame }: Search, { tie: turn }: Stand, bend: Bend, far: Seen): number {
  if (far.corridor === null) {
    const { bench, ground } = frame;
    const { tie, element } = far.anchor;
    const way = [bend.x, bend.y, tie.x, tie.y] as const;
    far.corridor = BLOCKED;
    if (corridorInside(frame, bend, far.anchor)) {
      const strips = strip(...way, LAYOUT_LIMITS.corridorM);
      far.corridor = laneBits(laneUse(bench, ground.traits, strips, Math.floor(element)).taken);
      far.lanes |= far.corridor;
      far.inWay = marksInWay(ground.hazards, ...way, [tie.id]).map(({ id }) => id);
    }
  }
  return far.inWay.every((id) => id === turn.id) ? far.corridor : BLOCKED;
}
