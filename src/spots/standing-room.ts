import type { Apparatus } from '../book/index.ts';
import { type Bench, type BenchSide, edgeKindAt, UNDER } from '../road/index.ts';
import { toRadians } from '../units/index.ts';
import type { Box } from './box-hit.ts';
import { reachableElements } from './reachable.ts';
import { narrowSetbackM, SETBACK_RULES, type Setback, type SetbackRule, setbackFrom } from './setbacks.ts';
import type { StandingGround } from './standing-ground.ts';

/** How far the outer wheels of one apparatus may stand out, an array element a station; offsets as drawn, metres. */
export interface StandingRoom {
  readonly ground: StandingGround;
  readonly apparatus: Apparatus;
  /** NaN where nothing may stand. */
  readonly leftM: Float64Array;
  readonly rightM: Float64Array;
  /** The same without what a narrow bench allows in mid-road: past these a spot is "check". */
  readonly fullLeftM: Float64Array;
  readonly fullRightM: Float64Array;
  /** Least distance owed to the end of the bench itself, metres: on the carriageway, where that is less. */
  readonly leastLeftM: Float64Array;
  readonly leastRightM: Float64Array;
  /** Index into `SETBACK_RULES` of what sets each limit. */
  readonly leftRule: Uint8Array;
  readonly rightRule: Uint8Array;
  /** Ends of the tagged or assumed carriageway, offsets as drawn, metres. */
  readonly wayLeftM: Float64Array;
  readonly wayRightM: Float64Array;
  /** 1 where the apparatus can drive to from an end of the bench. */
  readonly reachable: Uint8Array;
  /** Tangents of the road's grade and crossfall. */
  readonly gradeTan: Float64Array;
  readonly crossfallTan: Float64Array;
  /** What stays free beside the edge at the site; null without one. */
  readonly freeAtEdge: Box | null;
}

/** Curvature is taken over this many stations either side. */
const BEND_HALF = 5;

/** The room that an apparatus has along the bench. Every limit moves inward, or stays, as conditions get worse. */
export function standingRoom(ground: StandingGround, apparatus: Apparatus): StandingRoom {
  const { bench, traits } = ground;
  const { count, shiftM } = bench;
  const array = (): Float64Array => new Float64Array(count).fill(Number.NaN);
  const room = {
    ...{ ground, apparatus, leftM: array(), rightM: array(), fullLeftM: array(), fullRightM: array() },
    ...{ leastLeftM: array(), leastRightM: array(), leftRule: new Uint8Array(count), rightRule: new Uint8Array(count) },
    ...{ wayLeftM: array(), wayRightM: array(), reachable: reachableElements(bench, apparatus, ground.settings) },
    ...{ gradeTan: bench.gradeDeg.map(tangent), crossfallTan: bench.crossfallDeg.map(tangent) },
    freeAtEdge: freeAtEdge(ground),
  };
  if (bench.how === 'assumed') return room;
  const half = traits.carriageway.valueM / 2;
  for (let i = 0; i < count; i++) {
    room.wayLeftM[i] = shiftM[i] - half;
    room.wayRightM[i] = shiftM[i] + half;
    if (noStanding(bench, i)) continue;
    const left = endOf(ground, apparatus, i, -1);
    const right = endOf(ground, apparatus, i, 1);
    const spare = right.innerM + left.innerM - apparatus.widthM - swingOut(bench, i, apparatus.lengthM);
    const narrowLeft = narrowed(left.setback, right.setback, spare, ground);
    const narrowRight = narrowed(right.setback, left.setback, spare, ground);
    // Outward on the left is against the offsets.
    const fullLeft = limit(left, left.setback.onM, -room.wayLeftM[i]);
    const fullRight = limit(right, right.setback.onM, room.wayRightM[i]);
    room.leftM[i] = -limit(left, narrowLeft, -room.wayLeftM[i]).outM;
    room.rightM[i] = limit(right, narrowRight, room.wayRightM[i]).outM;
    room.fullLeftM[i] = -fullLeft.outM;
    room.fullRightM[i] = fullRight.outM;
    room.leastLeftM[i] = narrowLeft;
    room.leastRightM[i] = narrowRight;
    room.leftRule[i] = SETBACK_RULES.indexOf(fullLeft.rule);
    room.rightRule[i] = SETBACK_RULES.indexOf(fullRight.rule);
  }
  return room;
}

const tangent = (deg: number): number => Math.tan(toRadians(deg));

/** As deep as it is wide along the road. */
function freeAtEdge({ bench, site, settings }: StandingGround): Box | null {
  if (site === null) return null;
  const i = Math.max(0, Math.min(bench.count - 1, Math.round(site.stationM) - bench.firstStationM));
  const side = site.side < 0 ? bench.left : bench.right;
  const halfM = settings.freeAtEdgeM / 2;
  const inX = -site.side * bench.normalX[i];
  const inY = -site.side * bench.normalY[i];
  const deepM = settings.freeAtEdgeM - halfM;
  const [x, y] = [side.edgeX[i], side.edgeY[i]];
  return { x: x + inX * deepM, y: y + inY * deepM, ux: inX, uy: inY, halfLengthM: halfM, halfWidthM: halfM };
}

/** One end of the bench measured outward from the line as drawn, metres. */
interface End {
  readonly innerM: number;
  /** Barrier, ditch, wall or jump: nothing stands past it. */
  readonly blockedM: number;
  readonly setback: Setback;
}

function endOf(ground: StandingGround, apparatus: Apparatus, i: number, sign: -1 | 1): End {
  const { bench, traits, conditions, settings, steep } = ground;
  const side = sign < 0 ? bench.left : bench.right;
  const end = {
    kind: edgeKindAt(side, i),
    dropBehind: side.fallM[i] > 0,
    steepBelow: (sign < 0 ? steep.left : steep.right)[i] === 1,
    soft: (sign < 0 ? ground.softLeft : ground.softRight)[i] === 1,
  };
  const load = { grossMassKg: apparatus.grossMassKg, paved: traits.paved, wet: conditions.wet || conditions.ice };
  const usableM = sign * side.usableOffsetM[i];
  const lipM = sign * side.lipOffsetM[i] - settings.toeM;
  return {
    innerM: innerEnd(side, i, sign),
    // People stand as far out as the usable offset where the edge alone decides; less means a barrier, a ditch or a jump.
    blockedM: Number.isNaN(lipM) ? usableM : Math.min(lipM, usableM),
    setback: setbackFrom(end, load, settings),
  };
}

/** Where firm ground ends: the edge or 12 % passed before it; on level ground as far as it was seen to be level. */
function innerEnd(side: BenchSide, i: number, sign: -1 | 1): number {
  if (edgeKindAt(side, i) === 'none') return sign * side.usableOffsetM[i];
  const edge = sign * side.edgeOffsetM[i];
  const firm = sign * side.firmOffsetM[i];
  return Number.isNaN(firm) ? edge : Math.min(firm, edge);
}

/** How far out wheels may stand: on the carriageway up to its own setback, past it up to the greater one. */
function limit({ innerM, blockedM, setback }: End, onM: number, wayM: number): { outM: number; rule: SetbackRule } {
  const onOut = Math.min(innerM - onM, wayM);
  const offOut = innerM - setback.offM;
  const outM = Math.max(onOut, offOut);
  if (blockedM >= outM) {
    return { outM, rule: offOut >= onOut || wayM < innerM - onM ? setback.offRule : setback.onRule };
  }
  return { outM: blockedM, rule: setback.onRule === 'cut' || setback.onRule === 'level' ? setback.onRule : 'barrier' };
}

function narrowed(own: Setback, other: Setback, spareM: number, { settings }: StandingGround): number {
  if (!own.mayNarrow) return own.onM;
  return narrowSetbackM(own.onM, other.mayNarrow ? spareM / 2 : spareM - other.onM, settings);
}

/** By how much a straight vehicle parked on a bend needs more than its width, metres: the rise of its chord. */
function swingOut({ normalX, normalY, count }: Bench, i: number, lengthM: number): number {
  const a = Math.max(0, i - BEND_HALF);
  const b = Math.min(count - 1, i + BEND_HALF);
  if (a === b) return 0;
  const turn = Math.atan2(
    normalX[a] * normalY[b] - normalY[a] * normalX[b],
    normalX[a] * normalX[b] + normalY[a] * normalY[b],
  );
  return (lengthM * lengthM * Math.abs(turn)) / (8 * (b - a));
}

/** Nothing stands on a structure, nor on a culvert's trench and the metre beside it. */
function noStanding({ under, count }: Bench, i: number): boolean {
  for (let k = Math.max(0, i - 1); k <= Math.min(count - 1, i + 1); k++) if (under[k] === UNDER.trench) return true;
  return under[i] === UNDER.structure;
}
