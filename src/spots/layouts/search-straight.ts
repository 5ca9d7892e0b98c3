import type { PointM } from '../../geo/index.ts';
import { actualAdvantage, dot, idealAdvantage, type PlanVector, turnForce } from '../../rigging/index.ts';
import { toRadians } from '../../units/index.ts';
import { placeOnBench } from '../bench-place.ts';
import { boxOf, segmentHitsBox } from '../box-hit.ts';
import { strip } from '../footprint.ts';
import { laneUse } from '../lanes.ts';
import { type AnchorLoad, addLoad, freeOf, noLoad } from './anchor-load.ts';
import { belaysFor } from './belays-for.ts';
import type { BelayPlace, Candidate } from './candidate.ts';
import { chooseSystem, type SystemChoice } from './choose-system.ts';
import { marksInWay } from './corridor.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';
import { minutesOf } from './minutes-of.ts';
import { bitCount, laneBits, trafficPast } from './people-there.ts';
import { levelOf } from './podium.ts';
import type { PullBase } from './pull-base.ts';
import { rankKeyOf } from './rank-key.ts';
import type { Search } from './search.ts';
import { ropeClear } from './spots-apart.ts';
import type { Stand } from './stands.ts';
import { teamRoomM } from './team-room.ts';

const LEAST_FIELD_M = 3.5;
const MOST_FIELD_M = 30;
/** The field is walked from here behind the edge on: past the setback of people and ropes, half a corridor in. */
const FIELD_FROM_M = 1.6;
/** A rope tied to the middle of an end may run along it, not across the body. */
const ALONG_END = -0.17;

/**
 * Seeks straight hauls with the anchor on one of the stands. `mostM`: from the edge to the anchor as somebody taped it; a stand that
 * seems farther away is that near in truth.
 */
export function searchStraight(search: Search, anchors: readonly Stand[], mostM = Infinity): void {
  const { edge, back } = search.frame;
  const within = Math.cos(toRadians(LAYOUT_LIMITS.nearDescentDeg));
  for (const anchor of anchors) {
    const { tie } = anchor;
    const to = { x: tie.x - edge.x, y: tie.y - edge.y };
    const awayM = Math.hypot(to.x, to.y);
    const fieldM = Math.min(awayM, mostM);
    if (fieldM < LEAST_FIELD_M || awayM > MOST_FIELD_M || dot(to, back) < awayM * within) continue;
    const towardEdge = { x: -to.x / awayM, y: -to.y / awayM };
    if (tie.spot !== null && towardEdge.x * tie.outX + towardEdge.y * tie.outY < ALONG_END) continue;
    if (tie.spot !== null && !ropeClear(tie.spot, edge, tie, true)) continue;
    if (marksInWay(search.frame.ground.hazards, edge.x, edge.y, tie.x, tie.y, [tie.id], IN_FIELD).length > 0) continue;
    fromAnchor(search, anchor, fieldM, towardEdge);
  }
}

/** A barrier at the edge lifts the rope; it does not stop a straight haul. */
const IN_FIELD = ['barrier'];

function fromAnchor(search: Search, anchor: Stand, fieldM: number, towardEdge: PlanVector): void {
  const { frame, means, podiums } = search;
  const { bench, edge, back, ground, element } = frame;
  const { tie, unit } = anchor;
  const podium = podiums.straight;
  const { base, contacts } = search.baseAt('straight', fieldM);
  const start = { x: edge.x + back.x * FIELD_FROM_M, y: edge.y + back.y * FIELD_FROM_M };
  const away = { x: -towardEdge.x, y: -towardEdge.y };
  const backRoomM = Math.max(0.5, teamRoomM(bench, start, away, element, 0, tie.spot));
  const field = strip(start.x, start.y, tie.x, tie.y, LAYOUT_LIMITS.corridorM);
  const ownLanes = anchor.lanes | laneBits(laneUse(bench, ground.traits, field, element).taken);
  const places = { anchor: tie, turn: null, fieldM, base };
  for (const belay of belaysFor(search, anchor, 'straight', fieldM, base, { bend: tie, anchor: null })) {
    const hand = handTurnFor(search, anchor, belay);
    const apparatusAtMin = Math.max(unit?.atMin ?? 0, belay.atMin);
    const rigRopesM = search.rigRopesM('straight', apparatusAtMin);
    const fieldLanes = ownLanes | belay.lanes;
    for (const by of ['rank', 'resets'] as const) {
      const choose = (handTurns: 0 | 1, lanes: number): SystemChoice | null =>
        chooseSystem(
          {
            ...{ base, fieldM, ropeFieldM: fieldM, belayRunM: belay.runM, handTurns, rigRopesM },
            othersCount: trafficPast(ground.traits, lanes).othersCount,
          },
          means,
          by,
        );
      const plain = choose(0, fieldLanes);
      if (plain === null) continue;
      const turned = walkOf(plain) > backRoomM + 1e-9 ? hand : null;
      const roomM = turned === null ? backRoomM : turned.roomM;
      const walked = (of: SystemChoice): number => (turned === null ? 0 : handLanes(search, turned, walkOf(of)));
      let lanesTaken = fieldLanes;
      let choice = plain;
      // What is walked takes lanes, lanes ask for people, and people may ask for another system.
      for (let round = 0; round < ROUNDS; round++) {
        lanesTaken = fieldLanes | walked(choice);
        const next = choose(turned === null ? 0 : 1, lanesTaken) ?? plain;
        const settled = round > 0 && next.advantage === choice.advantage && next.throwM === choice.throwM;
        choice = next;
        if (settled) break;
      }
      lanesTaken = fieldLanes | walked(choice);
      choice = { ...choice, crewByAlarm: crewComes(search, base, choice, lanesTaken) };
      const lanes = bitCount(lanesTaken);
      const load = loadOf(search, anchor, belay, towardEdge, base, turned, choice);
      if (!podium.admits(rankKeyOf(frame, choice, lanes, load, 'straight', 0), levelOf({ ...places, choice })))
        continue;
      const candidate: Omit<Candidate, 'key'> = {
        ...{ kind: 'straight', along: turned?.along ?? 0, anchor: tie, turn: null, belay, base, contacts, fieldM },
        handTurn: turned && { tie: turned.stand.tie, bend: turned.bend, way: turned.way },
        ...{ roomM, choice, by, lanesTaken, apparatusAtMin },
      };
      const minutes = minutesOf(candidate, means, ground.traits).total ?? Number.POSITIVE_INFINITY;
      podium.offer({ ...candidate, key: rankKeyOf(frame, choice, lanes, load, 'straight', minutes) });
    }
  }
}

/** Rounds in which lanes and system are fitted to each other; of two that call for each other the last stands. */
const ROUNDS = 3;

/** True where the first alarm brings the people that a system asks for on so many lanes. */
function crewComes(
  { frame, means }: Search,
  base: PullBase,
  { advantage, handTurns }: SystemChoice,
  lanes: number,
): boolean {
  const { othersCount } = trafficPast(frame.ground.traits, lanes);
  return othersCount + base.byAdvantage[advantage].team[handTurns] <= means.peopleByAlarm;
}

const walkOf = ({ advantage, throwM }: SystemChoice): number => idealAdvantage(advantage) * throwM;

/** Where the hauling end may turn along the road: what holds it, which way it goes, and the room there. */
interface HandTurn {
  readonly stand: Stand;
  readonly bend: PointM;
  readonly way: PlanVector;
  readonly along: -1 | 1;
  readonly roomM: number;
}

/** The turn with most room: a further attachment of the anchor's apparatus, else a mark near by with no other line on it. */
function handTurnFor({ frame, marks }: Search, anchor: Stand, belay: BelayPlace): HandTurn | null {
  const { tie } = anchor;
  const lines = belay.tie.id === tie.id ? 3 : 2;
  const own = tie.anchor.kind === 'apparatus' && tie.anchor.attachments >= lines ? [anchor] : [];
  const others = marks.filter(
    (stand) =>
      stand.tie.id !== tie.id &&
      stand.tie.id !== belay.tie.id &&
      Math.hypot(stand.tie.x - tie.x, stand.tie.y - tie.y) <= LAYOUT_LIMITS.handTurnMostM,
  );
  let best: HandTurn | null = null;
  for (const stand of own.length > 0 ? own : others) {
    for (const along of [-1, 1] as const) {
      const turn = handTurnAt(frame, stand, along);
      if (turn !== null && inWay(belay, turn)) continue;
      if (turn !== null && (best === null || turn.roomM > best.roomM + 1e-9)) best = turn;
    }
  }
  return best;
}

/** True where apparatus that is there for the belay stands in the way of the hauling end. */
const inWay = ({ unit, tie }: BelayPlace, { bend, way, roomM }: HandTurn): boolean =>
  unit !== null &&
  tie.spot !== null &&
  segmentHitsBox(
    boxOf(tie.spot.footprint),
    LAYOUT_LIMITS.corridorM / 2,
    bend.x,
    bend.y,
    bend.x + way.x * roomM,
    bend.y + way.y * roomM,
  );

function handTurnAt(frame: Search['frame'], stand: Stand, along: -1 | 1): HandTurn | null {
  const { bench } = frame;
  const i = Math.max(0, Math.min(bench.count - 1, Math.round(stand.element)));
  const way = { x: -along * bench.normalY[i], y: along * bench.normalX[i] };
  const { tie } = stand;
  if (tie.spot !== null && way.x * tie.outX + way.y * tie.outY < -0.1) return null;
  const { edge } = frame;
  const toEdge = Math.hypot(edge.x - tie.x, edge.y - tie.y);
  const inM = tie.spot === null ? 1.5 : 0;
  const bend = { x: tie.x + ((edge.x - tie.x) / toEdge) * inM, y: tie.y + ((edge.y - tie.y) / toEdge) * inM };
  const at = new Float64Array(2);
  if (!placeOnBench(bench, bend.x, bend.y, stand.element, at)) return null;
  const roomM = teamRoomM(bench, bend, way, at[0], 0, null);
  return roomM > 0 ? { stand, bend, way, along, roomM } : null;
}

function handLanes({ frame }: Search, { bend, way, roomM, stand }: HandTurn, walkM: number): number {
  const m = Math.min(walkM, roomM);
  const corridor = strip(bend.x, bend.y, bend.x + way.x * m, bend.y + way.y * m, LAYOUT_LIMITS.corridorM);
  return laneBits(laneUse(frame.bench, frame.ground.traits, corridor, Math.floor(stand.element)).taken);
}

/** Every force of a straight haul on what holds it. */
function loadOf(
  { frame, means }: Search,
  anchor: Stand,
  belay: BelayPlace,
  towardEdge: PlanVector,
  { tensionKn }: PullBase,
  hand: HandTurn | null,
  choice: SystemChoice,
): AnchorLoad {
  const { rates, conditions } = means;
  const { tie } = anchor;
  const load = noLoad();
  const ids = [tie.id, belay.tie.id, ...(hand === null ? [] : [hand.stand.tie.id])];
  const free = (of: Stand['tie']): number => freeOf(of.anchor, ids.filter((id) => id === of.id).length);
  const atMain = free(tie);
  addLoad(load, tie.anchor, atMain, tensionKn.hanging, towardEdge, rates.haulingFactor, conditions, rates);
  addLoad(load, tie.anchor, atMain, tensionKn.held, towardEdge, rates.heldFactor, conditions, rates);
  const caught = { x: frame.edge.x - belay.tie.x, y: frame.edge.y - belay.tie.y };
  addLoad(load, belay.tie.anchor, free(belay.tie), tensionKn.belay, caught, rates.heldFactor, conditions, rates);
  if (hand !== null) {
    const kn = tensionKn.hanging / actualAdvantage(choice.advantage, rates.pulleyEfficiency, choice.handTurns);
    const force = turnForce(kn, towardEdge, kn, hand.way);
    const to = hand.stand.tie;
    addLoad(load, to.anchor, free(to), force.kn, force.toward, rates.haulingFactor, conditions, rates);
  }
  return load;
}
