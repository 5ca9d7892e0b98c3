import type { PointM } from '../../geo/index.ts';
import { toDegrees } from '../../units/index.ts';
import { type Bend, bendAt } from './bends.ts';
import type { Candidate } from './candidate.ts';
import { chooseSystem } from './choose-system.ts';
import { fineStands, type Round } from './fine-stands.ts';
import type { HaulFrame } from './haul-frame.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';
import { LEAST_OTHERS } from './people-there.ts';
import type { Podium } from './podium.ts';
import { holdCounts, resetClass } from './rank.ts';
import type { Search } from './search.ts';
import { searchStraight } from './search-straight.ts';
import { searchBends } from './search-turned.ts';
import { type Stand, unitStands } from './stands.ts';
import type { TiePlace } from './tie-places.ts';

/** So often the leaders are looked round again while that still fills a place. */
const ROUNDS = 2;

/** Round the anchor: all the way across; then both ends and the bend together, in small steps. */
const ACROSS: Round = { alongM: 2, acrossDm: 50, stepDm: 5 };
const SMALL: Round = { alongM: 1, acrossDm: 3, stepDm: 1 };
const SHORT: Round = { alongM: 3, acrossDm: 60, stepDm: 5 };
const STRAIGHT: Round = { alongM: 1, acrossDm: 5, stepDm: 1 };

/**
 * On a grade where the hold counts, and a decimetre may decide: looks round the turned hauls that lead one way along the road, finer
 * than the candidate spots and bends, for better ones.
 */
export function refineTurned(search: Search, along: -1 | 1, reached: (stand: Stand) => boolean): void {
  if (!holdCounts(search.frame.grade)) return;
  const podium = search.podiums.turned[along];
  eachLeader(podium, (leader) => {
    const turn = leader.turn!;
    const free = (id: string | undefined) => id === undefined;
    const { anchor: anchorPin, turn: turnPin } = search.pins;
    const about = (tie: TiePlace, round: Round, moves: boolean): Stand[] =>
      [...standsAt(search, tie), ...(moves ? finer(search, tie, round) : [])].filter(reached);
    const anchors = about(leader.anchor, ACROSS, free(anchorPin));
    if (free(anchorPin)) anchors.push(...shortFields(search, leader).filter(reached));
    const turns = standsAt(search, turn.tie).filter(reached);
    searchBends(search, bendsAbout(search, turn.bend, along, COARSE), turns, anchors, along);
    const near = about(turn.tie, SMALL, free(turnPin));
    searchBends(
      search,
      bendsAbout(search, turn.bend, along, FINE),
      near,
      about(leader.anchor, SMALL, free(anchorPin)),
      along,
    );
  });
}

/** The same for straight hauls. */
export function refineStraight(search: Search, mostM: number | undefined, reached: (stand: Stand) => boolean): void {
  if (search.pins.anchor !== undefined || !holdCounts(search.frame.grade)) return;
  eachLeader(search.podiums.straight, ({ anchor }) =>
    searchStraight(search, finer(search, anchor, STRAIGHT).filter(reached), mostM),
  );
}

function eachLeader(podium: Podium, look: (leader: Candidate) => void): void {
  const looked = new Set<Candidate>();
  for (let round = 0; round < ROUNDS; round++) {
    const leaders = podium.leaders().filter((one) => !looked.has(one));
    for (const leader of leaders) {
      looked.add(leader);
      look(leader);
    }
    if (leaders.length === 0) return;
  }
}

const unitOf = ({ means }: Search, { spot }: TiePlace) =>
  means.units.find(({ apparatus }) => apparatus.id === spot?.apparatusId);

function finer(search: Search, tie: TiePlace, round: Round): Stand[] {
  const unit = unitOf(search, tie);
  return unit === undefined || tie.spot === null ? [] : fineStands(search, unit, tie.spot, round);
}

/**
 * Places across the whole bench for the anchor of a leader with the shortest fields that are as good on every step before the hold:
 * the nearer the anchor, the more its line may slant, and the less the bent line pulls.
 */
function shortFields(
  search: Search,
  { anchor, base, belay, choice, fieldM, along, apparatusAtMin, by }: Candidate,
): Stand[] {
  const unit = unitOf(search, anchor);
  if (unit === undefined || anchor.spot === null) return [];
  const question = { base, belayRunM: belay.runM, handTurns: 0, othersCount: LEAST_OTHERS } as const;
  const rigRopesM = search.rigRopesM('turned', apparatusAtMin);
  const asGood = (m: number): boolean => {
    const one = chooseSystem({ ...question, fieldM: m, ropeFieldM: m, rigRopesM }, search.means, by);
    return (
      one !== null &&
      one.advantage === choice.advantage &&
      one.kit === choice.kit &&
      one.crewByAlarm === choice.crewByAlarm &&
      resetClass(one.resets) === resetClass(choice.resets)
    );
  };
  let shorterM = 0;
  while (fieldM - shorterM - 1 > 0 && asGood(fieldM - shorterM - 1)) shorterM++;
  if (shorterM === 0) return [];
  const { stationM, offsetM } = anchor.spot;
  const middle = stationM - along * (shorterM - SHORT.alongM);
  return fineStands(search, unit, { stationM: middle, offsetM }, SHORT);
}

/** What a tie of a leader stands on, as the search knows it. */
function standsAt(search: Search, tie: TiePlace): Stand[] {
  if (tie.spot === null) return search.marks.filter((stand) => stand.tie.id === tie.id);
  const unit = unitOf(search, tie);
  return unit === undefined ? [] : unitStands(search.frame, unit, [tie.spot], tie.spot.id);
}

/** Rays and distances round a bend, in steps of degrees and metres. */
interface BendRound {
  readonly rays: number;
  readonly stepDeg: number;
  readonly steps: number;
  readonly stepM: number;
}

const COARSE: BendRound = { rays: 2, stepDeg: 2.5, steps: 2, stepM: 0.25 };
const FINE: BendRound = { rays: 4, stepDeg: 0.5, steps: 1, stepM: 0.1 };

function bendsAbout(
  { frame, means }: Search,
  { x, y }: PointM,
  along: -1 | 1,
  { rays, stepDeg, steps, stepM }: BendRound,
): Bend[] {
  const { nearDescentDeg, bendOffDeg, turnBehindM } = LAYOUT_LIMITS;
  const middleDeg = rayOf(frame, x, y);
  const wide = Math.abs(middleDeg) > nearDescentDeg + 1e-6;
  const middleM = Math.hypot(x - frame.edge.x, y - frame.edge.y);
  const bends: Bend[] = [];
  for (let j = -steps; j <= steps; j++) {
    const toEdgeM = middleM + j * stepM;
    if (toEdgeM < turnBehindM - 1e-9) continue;
    for (let k = -rays; k <= rays; k++) {
      const rayDeg = middleDeg + k * stepDeg;
      const off = Math.abs(rayDeg);
      if (wide ? off > bendOffDeg + 1e-9 || off <= nearDescentDeg : off > nearDescentDeg + 1e-9) continue;
      bends.push(...bendAt(frame, along, means.rates.pulleyEfficiency, rayDeg, toEdgeM));
    }
  }
  return bends;
}

/** Degrees from the descent's line, produced backwards, to a bend. */
function rayOf({ edge, back }: HaulFrame, x: number, y: number): number {
  const [dx, dy] = [x - edge.x, y - edge.y];
  return toDegrees(Math.atan2(back.x * dy - back.y * dx, back.x * dx + back.y * dy));
}
