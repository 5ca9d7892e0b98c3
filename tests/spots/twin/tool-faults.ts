import type { Apparatus } from '../../../src/book/index.ts';
import type { HaulAnchors } from '../../../src/rigging/index.ts';
import type { Layout, RankKey, Spot } from '../../../src/spots/index.ts';
import { anchorsUnder, CLOSELY_M, straightLines, turnedLines } from './anchors.ts';
import { bendFault, corridorOf, edgeOf, legFault, straightFault, turnedFault } from './keeps.ts';
import type { Objective, Placed } from './objective.ts';
import { type End, lanesOf, mayStand, type Parked } from './parked.ts';
import { alongAt, distance, type Point, placeAt, type Rect } from './plane.ts';
import type { TwinRoad } from './road.ts';
import { fieldLanes, handLanes } from './seek-straight.ts';

/** Between stations a width is taken as straight, headings are whole degrees: so much of each rule may be lost to that. */
const SPARE = { m: -0.07, deg: -0.5 };
/** How far off the descent's line a change of direction may stand where nothing holds a nearer one, degrees. */
const WIDE_DEG = 25;

/** By so much a chord between stations may reach over a line between lanes, or stop short of it, metres. */
const TOUCHES_M = [1e-6, 0.03, -0.03];

/** What is wrong with a layout of the tool by the rules and the figures of the twin, in words. */
export function toolFaults(
  road: TwinRoad,
  objective: Objective,
  spots: readonly Spot[],
  fleet: readonly Apparatus[],
  layout: Layout,
): string[] {
  const tries = TOUCHES_M.map((touchM) => faultsOf(road, objective, spots, fleet, layout, touchM));
  return tries.some(({ length }) => length === 0) ? [] : tries[0]!;
}

function faultsOf(
  road: TwinRoad,
  objective: Objective,
  spots: readonly Spot[],
  fleet: readonly Apparatus[],
  layout: Layout,
  touchM: number,
): string[] {
  const edge = edgeOf(road);
  const faults: string[] = [];
  const of = (id: string): { end: (at: Point) => End; apparatus: Apparatus } => {
    const spot = spots.find((one) => one.id === id)!;
    const apparatus = fleet.find((one) => one.id === spot.apparatusId)!;
    const rect = rectOf(spot);
    if (!mayStand(road, rect, apparatus.grossMassKg, SPARE.m)) faults.push(`${id} may not stand there`);
    const parked: Parked = { rect, stationM: spot.stationM, lanes: lanesOf(road, rect, touchM) };
    return { apparatus, end: (at) => endOf(parked, at) };
  };
  const anchor = of(layout.anchor.id);
  const end = anchor.end(layout.anchor.at);
  const { run, turn, handTurn } = layout;
  const shared = { fieldM: run.fieldM, roomM: run.walkingRoomM, atMin: layout.apparatusAtMin };
  if (Math.abs(distance(turn?.bend ?? edge, end) - run.fieldM) > 0.01) faults.push('haul field');
  const mains = anchorsUnder(road, anchor.apparatus, end.parked, CLOSELY_M);
  let placed: Placed;
  let lines: HaulAnchors[];
  if (turn !== null) {
    const held = of(turn.id);
    const tie = held.end(turn.at);
    const fault =
      turnedFault(road, tie, turn.bend, end, SPARE) ??
      legFault(road, turn.bend, end, SPARE) ??
      bendFault(road, turn.bend, WIDE_DEG, SPARE);
    if (fault !== null) faults.push(fault);
    const toEdgeM = distance(turn.bend, edge);
    const lanes = tie.parked.lanes | end.parked.lanes | lanesOf(road, corridorOf(turn.bend, end), touchM);
    placed = { ...shared, kind: 'turned', toEdgeM, belayRunM: toEdgeM + 3, handTurns: 0, lanes };
    const turns = anchorsUnder(road, held.apparatus, tie.parked, CLOSELY_M);
    lines = mains.flatMap((main) => turns.map((one) => turnedLines(one, tie, turn.bend, edge, main, end)));
  } else {
    const fault = straightFault(road, end, SPARE);
    if (fault !== null) faults.push(fault);
    const toEdgeM = distance(end, edge);
    const way = handTurn && straightWay(layout, road, end);
    const hand = way ? handLanes(road, end, { way, roomM: run.walkingRoomM }, layout.haul.walkM, touchM) : 0;
    const lanes = end.parked.lanes | fieldLanes(road, end, touchM) | hand;
    placed = { ...shared, kind: 'straight', toEdgeM, belayRunM: toEdgeM, handTurns: way ? 1 : 0, lanes };
    lines = mains.map((main) => straightLines(main, end, edge, way));
  }
  if (layout.belay.sharesWith !== (turn ?? layout.anchor).id) faults.push('belay on its own');
  const keys = lines.map((one) => objective.key(placed, run, one));
  return [...faults, ...keyFaults(layout.key, keys)];
}

/** The key that the tool ranks by against the twin's for the same places, on the falls under the apparatus. */
function keyFaults(key: RankKey, keys: readonly (RankKey | null)[]): string[] {
  const [one] = keys;
  if (!one) return ['throw too short'];
  const faults: string[] = [];
  for (const name of ['verdict', 'practical', 'kit', 'crewByAlarm', 'advantage', 'resets', 'lanes'] as const) {
    if (keys.every((of) => of![name] !== key[name])) faults.push(`${name} ${key[name]}, by the twin ${one[name]}`);
  }
  const most = Math.max(...keys.map((of) => of!.leastHoldFactor!));
  if (key.leastHoldFactor! > most + 0.02) faults.push(`hold ${key.leastHoldFactor}, by the twin ${most}`);
  if (Math.abs(key.minutes - one.minutes) > 0.01) faults.push(`minutes ${key.minutes}, by the twin ${one.minutes}`);
  return faults;
}

/** Along the road at the end that the rope is tied to. */
function straightWay({ along }: Layout, road: TwinRoad, end: End): Point {
  const at = new Float64Array(2);
  placeAt(road, end.x, end.y, at);
  const way = alongAt(road, at[0]!);
  return { x: along * way.x, y: along * way.y };
}

function rectOf({ footprint: { x, y, headingDeg, lengthM, widthM } }: Spot): Rect {
  const a = (headingDeg * Math.PI) / 180;
  return { x, y, ux: Math.sin(a), uy: Math.cos(a), halfLengthM: lengthM / 2, halfWidthM: widthM / 2 };
}

/** The end of a parked apparatus that a point lies at. */
function endOf(parked: Parked, at: Point): End {
  const { x, y, ux, uy } = parked.rect;
  const sign = (at.x - x) * ux + (at.y - y) * uy > 0 ? 1 : -1;
  return { x: at.x, y: at.y, parked, outX: sign * ux, outY: sign * uy };
}
