import { type Apparatus, defaultRates as rates } from '../../../src/book/index.ts';
import { type Anchor, type Haul, holdKn, tireFriction, turnForce } from '../../../src/rigging/index.ts';
import type { RankKey } from '../../../src/spots/index.ts';
import { SITE_M } from '../layout-sites.ts';
import { anchorsUnder, turnedLines } from './anchors.ts';
import { backOf, bendFault, corridorOf, edgeOf, from, legFault, turnedFault } from './keeps.ts';
import { bitsIn, codeOf, type Objective, type Placed, worstOf } from './objective.ts';
import { type End, endsOf, lanesOf, type Parked } from './parked.ts';
import { alongAt, distance, type Point } from './plane.ts';
import type { TwinRoad } from './road.ts';
import { Sought, SPARE, tenthsOf } from './sought.ts';

interface Bend extends Point {
  readonly toEdgeM: number;
}

/** An end of parked apparatus with what does not hang on the bend. */
interface Place {
  readonly end: End;
  readonly anchors: readonly Anchor[];
  readonly lanes: number;
}

/** Where a look may begin: near what the tool chose. The order alone, nothing is left out by it. */
export interface Hint {
  readonly anchor: Point;
  readonly bend: Point;
}

/**
 * Looks for turned hauls one way along the road that rank before `best` (null: for any), over every bend of the grid and
 * every pair of parked ends. Pruned by what a field can at most come to, by lanes and by hold: bounds that lose nothing.
 */
export function seekTurned(
  road: TwinRoad,
  objective: Objective,
  apparatus: Apparatus,
  atMin: number,
  parked: readonly Parked[],
  way: -1 | 1,
  best: RankKey | null,
  hint: Hint | null,
): Sought {
  const sought = new Sought(best);
  const open = openTo(sought, objective.grade > 0.03);
  const edge = edgeOf(road);
  const along = alongAt(road, SITE_M);
  const places = parked.flatMap(endsOf).map((end): Place => {
    return { end, anchors: anchorsUnder(road, apparatus, end.parked), lanes: end.parked.lanes };
  });
  const first = (to: Point | undefined) => (a: Place, b: Place) => (to ? distance(a.end, to) - distance(b.end, to) : 0);
  const turns = places.filter(({ end }) => distance(end, edge) < 10).sort(first(hint?.bend));
  const anchors = places
    .filter(({ end }) => way * ((end.x - edge.x) * along.x + (end.y - edge.y) * along.y) > 2.5)
    .sort(first(hint?.anchor));
  const bends = bendsOf(road).sort((a, b) => (hint ? distance(a, hint.bend) - distance(b, hint.bend) : 0));
  for (const bend of bends) {
    const { toEdgeM } = bend;
    const placed: Placed = {
      ...{ kind: 'turned', toEdgeM, fieldM: 10, belayRunM: toEdgeM + 3, handTurns: 0, roomM: 10, atMin, lanes: 0 },
    };
    const hauled = objective.haul(placed, { advantage: '3:1', system: 'separate haul line', throwRopeM: null });
    const slips = slipsOf(objective, hauled);
    const u1 = from(bend, edge);
    // A corridor within 45° of the road reaches this far across it, where it starts.
    const bendLanes = lanesOf(road, { ...bend, ux: along.x, uy: along.y, halfLengthM: 0.05, halfWidthM: 0.7 });
    const codes: number[] = [];
    const seen = anchors.flatMap((anchor) => {
      const { end } = anchor;
      const fieldM = distance(bend, end);
      const leg = { x: (end.x - bend.x) / fieldM, y: (end.y - bend.y) / fieldM };
      if (fieldM < 3.51 || -(leg.x * end.outX + leg.y * end.outY) < FACES) return [];
      const metre = Math.floor(fieldM);
      codes[metre] ??= objective.bound(placed, metre);
      const code = codes[metre];
      if (!open(code, anchor.lanes, Number.POSITIVE_INFINITY)) return [];
      let hold = slips.anchor(anchor.anchors, leg);
      // On a straight road every apparatus stands on the same fall.
      if (road.curvature === 0) hold = Math.min(hold, slips.bent(anchor.anchors, u1, leg));
      if (!open(code, anchor.lanes | bendLanes, hold)) return [];
      return [{ ...anchor, lanes: anchor.lanes | bendLanes, leg, fieldM, code, hold, corridor: null as number | null }];
    });
    for (const turn of seen.length > 0 ? turns : []) {
      const tie = from(turn.end, bend);
      const tieM = Math.hypot(tie.x, tie.y);
      if (tieM < 0.51 || tieM > 3.99 || tie.x * turn.end.outX + tie.y * turn.end.outY < LEAVES * tieM) continue;
      const held = slips.held(turn.anchors, u1, from(turn.end, edge));
      for (const anchor of seen) {
        const { leg, fieldM, code, end, hold } = anchor;
        const [rx, ry] = [u1.x / toEdgeM + leg.x / 0.9, u1.y / toEdgeM + leg.y / 0.9];
        if (tie.x * rx + tie.y * ry < TIE_WITHIN * tieM * Math.sqrt(rx * rx + ry * ry)) continue;
        sought.looked++;
        const atLeast = turn.lanes | anchor.lanes;
        if (!open(code, atLeast, Math.min(held, hold))) continue;
        const least = Math.min(held, hold, slips.bent(turn.anchors, u1, leg));
        if (!open(code, atLeast, least)) continue;
        anchor.corridor ??= legFault(road, bend, end, SPARE) === null ? lanesOf(road, corridorOf(bend, end)) : BLOCKED;
        const lanes = atLeast | anchor.corridor;
        if (anchor.corridor === BLOCKED || !open(code, lanes, least)) continue;
        // One lane left open asks one more to hold traffic.
        if (!open(objective.bound({ ...placed, lanes }, Math.floor(fieldM)), lanes, least)) continue;
        if (turnedFault(road, turn.end, bend, end, SPARE) !== null) continue;
        workOut({ ...placed, fieldM, roomM: fieldM, lanes }, turn, bend, {
          end,
          anchors: anchorsUnder(road, apparatus, end.parked),
        });
        if (sought.before !== null) return sought;
      }
    }
  }
  return sought;

  function workOut(
    placed: Placed,
    turn: Place,
    bend: Bend,
    { end, anchors: mains }: Pick<Place, 'end' | 'anchors'>,
  ): void {
    for (const rig of objective.rigs()) {
      sought.workedOut++;
      const keys = mains.map((main, k) =>
        objective.key(placed, rig, turnedLines(turn.anchors[k]!, turn.end, bend, edge, main, end)),
      );
      const key = worstOf(keys);
      if (key === null) continue;
      const at = ({ parked: { stationM, rect } }: End): string =>
        `${stationM} m (${rect.x.toFixed(2)}, ${rect.y.toFixed(2)})`;
      sought.offer(
        key,
        () =>
          `turn ${at(turn.end)}, bend ${bend.x.toFixed(2)}, ${bend.y.toFixed(2)}, anchor ${at(end)}, field ${placed.fieldM.toFixed(2)}`,
      );
    }
  }
}

const BLOCKED = -1;
const FACES = Math.cos((44.9 * Math.PI) / 180);
const LEAVES = 0.352;
const TIE_WITHIN = Math.cos((19.9 * Math.PI) / 180);

/** Bends on a grid about the descent's line: each quarter of a metre and each degree. */
function bendsOf(road: TwinRoad): Bend[] {
  const [edge, back] = [edgeOf(road), backOf(road)];
  const bends: Bend[] = [];
  for (let toEdgeM = 2.5; toEdgeM <= 6; toEdgeM += 0.25) {
    for (let deg = -9; deg <= 9; deg++) {
      const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
      const ray = { x: back.x * c - back.y * s, y: back.x * s + back.y * c };
      const bend = { x: edge.x + toEdgeM * ray.x, y: edge.y + toEdgeM * ray.y, toEdgeM };
      if (bendFault(road, bend, 10, SPARE) === null) bends.push(bend);
    }
  }
  return bends;
}

/** Whether steps from code to hold could still bring something before the best, or level with it while nothing is. */
function openTo(sought: Sought, holdCounts: boolean): (code: number, lanes: number, hold: number) => boolean {
  const { best } = sought;
  if (best === null) return () => true;
  const [bestCode, bestTenths] = [codeOf(best), tenthsOf(best)];
  return (code, lanes, hold) => {
    // With its factors met, what nobody meets does not matter.
    if (best.verdict !== 'yes') {
      if (hold >= rates.holdFactor - 1e-9) return true;
    } else if (hold < rates.holdFactor - 1e-9) return false;
    if (code !== bestCode) return code < bestCode;
    if (bitsIn(lanes) !== best.lanes) return bitsIn(lanes) < best.lanes;
    if (holdCounts) {
      const tenths = Math.floor(10 * hold + 1e-9);
      if (tenths !== bestTenths || sought.level) return tenths > bestTenths;
    }
    return !sought.level;
  };
}

/** Factors against sliding, the least of the grounds given. */
function slipsOf(objective: Objective, { tensionKn, farKn }: Haul) {
  const friction = tireFriction(objective.question.ground.conditions, rates);
  const least = (anchors: readonly Anchor[], kn: number, toward: Point): number => {
    let factor = Number.POSITIVE_INFINITY;
    for (const anchor of anchors) {
      if (anchor.kind !== 'apparatus') continue;
      const hold = friction === null ? 0 : holdKn(anchor.emptyMassKg, friction, rates.brakedShare, anchor.fall, toward);
      factor = Math.min(factor, hold / kn);
    }
    return factor;
  };
  return {
    anchor: (anchors: readonly Anchor[], leg: Point) => least(anchors, farKn.hanging, { x: -leg.x, y: -leg.y }),
    held: (anchors: readonly Anchor[], toEdge: Point, caught: Point) =>
      Math.min(least(anchors, tensionKn.held, toEdge), least(anchors, tensionKn.belay, caught)),
    bent: (anchors: readonly Anchor[], toEdge: Point, leg: Point) => {
      const { kn, toward } = turnForce(tensionKn.hanging, toEdge, farKn.hanging, leg);
      return least(anchors, kn, toward);
    },
  };
}
