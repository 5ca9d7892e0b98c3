import { type AnchorLoad, noLoad, sumOf } from './anchor-load.ts';
import { type BendSearch, type Exact, type Haul, isOpen, type Seen } from './anchors-seen.ts';
import type { Bend } from './bends.ts';
import type { BelayPlace } from './candidate.ts';
import { chooseSystem, type SystemChoice, sameSystem } from './choose-system.ts';
import { BLOCKED } from './corridor.ts';
import { minutesOf } from './minutes-of.ts';
import { bitCount, trafficPast } from './people-there.ts';
import { levelOf } from './podium.ts';
import { rankKeyOf } from './rank-key.ts';
import type { Search } from './search.ts';
import type { Stand } from './stands.ts';
import { bodiesClear } from './turned-clear.ts';
import { corridorTo, roomOf } from './turned-corridor.ts';
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
  if (far.corridor?.lanes === BLOCKED) return;
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
  const roomM = roomOf(search, bend, corridorTo(search, bend, far.anchor), far);
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
function corridorOf(search: Search, { tie: turn }: Stand, bend: Bend, far: Seen): number {
  far.corridor ??= corridorTo(search, bend, far.anchor);
  const { lanes, inWay } = far.corridor;
  if (lanes !== BLOCKED) far.lanes |= lanes;
  return inWay.every((id) => id === turn.id) ? lanes : BLOCKED;
}
