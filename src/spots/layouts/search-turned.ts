import type { PlanVector } from '../../rigging/index.ts';
import { toRadians } from '../../units/index.ts';
import { placeOnBench } from '../bench-place.ts';
import { strip } from '../footprint.ts';
import { laneUse } from '../lanes.ts';
import { type AnchorLoad, noLoad } from './anchor-load.ts';
import { belaysBeside, belaysFor } from './belays-for.ts';
import { type Bend, bendsFor } from './bends.ts';
import type { BelayPlace, Candidate } from './candidate.ts';
import { chooseSystem } from './choose-system.ts';
import { corridorSight, MARK_SHORT_M, type Sight } from './corridor.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';
import { minutesOf } from './minutes-of.ts';
import { bitCount, bitsBetween, laneBits, trafficPast } from './people-there.ts';
import type { PullBase } from './pull-base.ts';
import { rankKeyOf } from './rank-key.ts';
import type { Search } from './search.ts';
import type { Stand } from './stands.ts';
import { teamRoomM } from './team-room.ts';
import { isClear } from './turned-clear.ts';
import { heldLoad, turnedLoad } from './turned-load.ts';

/** An anchor faces its rope within 45°. */
const FACES = Math.SQRT1_2;
const LEAST_FIELD_M = 3.5;

/**
 * Seeks turned hauls with a change of direction on one of `turns` and the anchor on one of `anchors`, one way along the road.
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
  const near = turns.filter(({ tie }) => Math.hypot(tie.x - frame.edge.x, tie.y - frame.edge.y) < NEAR_M);
  const far = anchors.filter(({ alongM }) => alongM * along > LEAST_FIELD_M - 1);
  for (const turn of near) {
    for (const bend of bendsFor(frame, turn, along, means, wide)) {
      search.trace.bends++;
      fromBend(search, turn, bend, along, far);
    }
  }
}

/** No attachment farther from the edge reaches a bend by its tie. */
const NEAR_M = 6 + LAYOUT_LIMITS.tieMostM;

/** A bend under search: what every pair with an anchor has in common. */
interface BendSearch {
  readonly turn: Stand;
  readonly bend: Bend;
  readonly along: -1 | 1;
  readonly element: number;
  readonly base: PullBase;
  readonly contacts: Candidate['contacts'];
}

/** A belay for a bend, with what lies on turn and belay whatever the anchor. */
interface BendBelay {
  readonly place: BelayPlace;
  readonly held: AnchorLoad;
}

function fromBend(search: Search, turn: Stand, bend: Bend, along: -1 | 1, anchors: readonly Stand[]): void {
  const { frame } = search;
  const { bench, road } = frame;
  const { base, contacts } = search.baseAt('turned', bend.toEdgeM, bend.offLineDeg);
  const way = { x: along * road.x, y: along * road.y };
  if (!placeOnBench(bench, bend.x, bend.y, frame.element, at)) return;
  const element = at[0];
  const sight = corridorSight(bench, bend.x, bend.y, element, along, way, search.sight);
  const onward = { bend, anchor: { x: bend.x + along * road.x, y: bend.y + along * road.y } };
  const belays = belaysFor(search, turn, 'turned', bend.toEdgeM, base, onward).map(
    (place): BendBelay => ({ place, held: heldLoad(search, turn, bend, place, base) }),
  );
  const one = { turn, bend, along, element, base, contacts };
  const { towardEdge, tieX, tieY } = bend;
  const efficiency = search.means.rates.pulleyEfficiency;
  const { mostFieldM, laneGrid } = search;
  const asideM = at[1] - bench.shiftM[Math.round(element)];
  for (const anchor of anchors) {
    const { tie, walk } = anchor;
    const dx = tie.x - bend.x;
    const dy = tie.y - bend.y;
    const fieldM = Math.sqrt(dx * dx + dy * dy);
    if (fieldM < LEAST_FIELD_M || fieldM > mostFieldM || tie.id === turn.tie.id) continue;
    const across = tie.spot === null ? asideM : anchor.asideM;
    const lanes =
      turn.lanes |
      anchor.lanes |
      bitsBetween(laneGrid, Math.min(asideM, across) - CORRIDOR_SURE_M, Math.max(asideM, across) + CORRIDOR_SURE_M);
    if (!belays.some(({ place }) => isOpen(search, one, anchor, place, fieldM, lanes))) continue;
    const ux = dx / fieldM;
    const uy = dy / fieldM;
    if (tie.spot !== null && -(ux * tie.outX + uy * tie.outY) < FACES) continue;
    const seen = tie.spot === null ? anchor.element - along * MARK_SHORT_M : anchor.element;
    if (!inSight(sight, walk.x - bend.x, walk.y - bend.y, way, seen, along)) continue;
    search.trace.inSight++;
    const rx = towardEdge.x + ux / efficiency;
    const ry = towardEdge.y + uy / efficiency;
    if (tieX * rx + tieY * ry < TIE_WITHIN * Math.sqrt(rx * rx + ry * ry)) continue;
    for (const belay of belaysBeside(belays, turn, bend, anchor))
      for (const by of ['rank', 'resets'] as const) tryPair(search, one, anchor, belay, fieldM, lanes, by);
  }
}

/** True where some hope of a field is left on so many lanes. */
function isOpen(
  { hopeOf }: Search,
  { turn, along, base }: BendSearch,
  anchor: Stand,
  belay: BelayPlace,
  fieldM: number,
  lanesTaken: number,
): boolean {
  const { runM } = belay;
  const atMin = Math.max(turn.unit?.atMin ?? 0, anchor.unit?.atMin ?? 0, belay.atMin);
  const lanes = bitCount(lanesTaken | belay.lanes);
  const byRank = hopeOf(base, fieldM, runM, atMin, 'rank');
  if (byRank !== null && lanes < byRank.refusedLanes[along]) return true;
  const byResets = hopeOf(base, fieldM, runM, atMin, 'resets');
  return byResets !== null && lanes < byResets.refusedLanes[along];
}

const at = new Float64Array(2);
const TIE_WITHIN = Math.cos(toRadians(LAYOUT_LIMITS.tieOffDeg));

/** Works a pair of bend and anchor out as far as it can still take a place, cheapest tests first. */
function tryPair(
  search: Search,
  one: BendSearch,
  anchor: Stand,
  { place: belay, held }: BendBelay,
  fieldM: number,
  lanesBeside: number,
  by: 'rank' | 'resets',
): void {
  const { turn, bend, along, element, base, contacts } = one;
  const { frame, means } = search;
  const { bench, ground } = frame;
  const { tie } = anchor;
  const podium = search.podiums.turned[along];
  const apparatusAtMin = Math.max(turn.unit?.atMin ?? 0, anchor.unit?.atMin ?? 0, belay.atMin);
  const lanesAtLeast = lanesBeside | belay.lanes;
  const hope = search.hopeOf(base, fieldM, belay.runM, apparatusAtMin, by);
  if (hope === null) return;
  const places = { anchor: tie, turn: { tie: turn.tie, bend }, fieldM, base, choice: hope.choice };
  const fewest = bitCount(lanesAtLeast);
  if (fewest >= hope.refusedLanes[along]) return;
  const best = rankKeyOf(frame, hope.choice, fewest, NO_LOAD, 'turned', hope.minutes);
  if (!podium.admits(best, { ...places, ...EVEN, fieldM: hope.fieldM })) {
    // Places only fill with better ones: what is refused once is refused for good.
    hope.refusedLanes[along] = fewest;
    return;
  }
  const leg = { x: (tie.x - bend.x) / fieldM, y: (tie.y - bend.y) / fieldM };
  const load = turnedLoad(search, one, held, leg, anchor, belay);
  if (!podium.admits(rankKeyOf(frame, hope.choice, fewest, load, 'turned', hope.minutes), places)) return;
  const corridor = strip(bend.x, bend.y, tie.x, tie.y, LAYOUT_LIMITS.corridorM);
  const lanesTaken = lanesAtLeast | laneBits(laneUse(bench, ground.traits, corridor, Math.floor(anchor.element)).taken);
  const lanes = bitCount(lanesTaken);
  const choice = chooseSystem(
    {
      ...{ base, fieldM, ropeFieldM: fieldM, belayRunM: belay.runM, handTurns: 0 },
      othersCount: trafficPast(ground.traits, lanesTaken).othersCount,
      rigRopesM: search.rigRopesM('turned', apparatusAtMin),
    },
    means,
    by,
  );
  if (choice === null) return;
  const known = rankKeyOf(frame, choice, lanes, load, 'turned', hope.minutes);
  if (!podium.admits(known, { ...places, choice }) || !isClear(search, turn, bend, anchor, element)) return;
  const roomM = teamRoomM(bench, bend, leg, element, fieldM, tie.spot);
  const candidate: Omit<Candidate, 'key'> = {
    ...{ kind: 'turned', along, anchor: tie, turn: { tie: turn.tie, bend }, belay, handTurn: null },
    ...{ base, contacts, fieldM, roomM, choice, by, lanesTaken, apparatusAtMin },
  };
  const minutes = minutesOf(candidate, means, ground.traits).total ?? Number.POSITIVE_INFINITY;
  podium.offer({ ...candidate, key: rankKeyOf(frame, choice, lanes, load, 'turned', minutes) });
}

const NO_LOAD = noLoad();
/** Spots with nothing to check: what a tie could at best come to. */
const EVEN = { anchor: { spot: null }, turn: null };
/** A corridor reaches at least this far to either side of its ends across the road, however it slants, metres. */
const CORRIDOR_SURE_M = 0.7;

function inSight(sight: Sight, dx: number, dy: number, way: PlanVector, element: number, along: -1 | 1): boolean {
  const i = along > 0 ? Math.floor(element) : Math.ceil(element);
  const slope = (way.x * dy - way.y * dx) / (way.x * dx + way.y * dy);
  return slope >= sight.from[i] && slope <= sight.to[i];
}
