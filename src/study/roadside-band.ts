import type { AngleClass, AngleRule, Mark } from '../book/index.ts';
import type { LocalPlane, LonLat } from '../geo/index.ts';
import {
  type Bench,
  type BenchSide,
  benchInput,
  defaultSetbacks,
  type EdgeKind,
  edgeKindAt,
  findBench,
  legAt,
  type RoadIndex,
  type RoadPlace,
  type Route,
} from '../road/index.ts';
import type { Ground } from '../terrain/index.ts';
import { withLikelyKind } from './likely-kind.ts';
import { type Side, workUpSide } from './side.ts';

/** What the roadside of a stretch is told from. */
export interface RoadsideInputs {
  /** Ground on a plane centred at the middle of the stretch, reaching past its ends as far as a descent may go. */
  readonly ground: Ground;
  readonly roads: RoadIndex;
  readonly marks: readonly Mark[];
  readonly route: Route;
  /** Stations of the stretch on its route, metres; at most 200 m apart. */
  readonly fromM: number;
  readonly toM: number;
  /** Distance between the descents that are worked out, metres. */
  readonly everyM: number;
  readonly rule: AngleRule;
}

/** A piece of an edge of the road bench, `line` as lon, lat pairs in degrees (stride 2), in the direction of the road's drawing. */
export interface RoadsideEdge {
  readonly side: Side;
  readonly kind: EdgeKind;
  readonly line: Float64Array;
}

/** A piece of a drop edge with one class: what to plan as, null where no descent could be worked out. */
export interface RoadsidePiece {
  readonly side: Side;
  readonly planAs: AngleClass | null;
  readonly undecided: boolean;
  readonly line: Float64Array;
}

/** What stands beside a stretch of road. */
export interface Roadside {
  readonly edges: readonly RoadsideEdge[];
  readonly band: readonly RoadsidePiece[];
}

type Reading = Omit<RoadsidePiece, 'side' | 'line'>;

/** Edge points of neighbouring metres farther apart than this are not joined, metres: the bench ends or begins there. */
const JUMP_M = 4;
const steeper: readonly (AngleClass | null)[] = [null, 'low', 'steep', 'high'];

/**
 * Edges of the bench along a stretch of road and, where the ground drops, the class of the descent every few metres, worked
 * out as a study does. Between two descents the steeper counts; an unread one makes the other undecided. Yields after every
 * descent, so that the caller can do something else or stop.
 */
export function* roadsideBand(inputs: RoadsideInputs): Generator<void, Roadside> {
  const { ground, roads, marks, route, fromM, toM } = inputs;
  const middleM = (fromM + toM) / 2;
  const input = benchInput(roads, route, ground, marks, defaultSetbacks, middleM, (toM - fromM) / 2);
  if (input.line.x.length < 2) return { edges: [], band: [] };
  const bench = findBench(input, fromM, toM);
  yield;
  const edges: RoadsideEdge[] = [];
  const band: RoadsidePiece[] = [];
  for (const side of ['left', 'right'] as const) {
    for (const { kind, from, to } of edgeRuns(bench[side])) {
      edges.push({ side, kind, line: lineOf(bench[side], from, to, ground.plane) });
      if (kind === 'drop') band.push(...(yield* classified(inputs, bench, side, from, to)));
    }
  }
  return { edges, band };
}

/** Unbroken runs of one kind of edge; the metre at which a kind changes belongs to both. */
function edgeRuns(side: BenchSide): { kind: EdgeKind; from: number; to: number }[] {
  const { edgeX, edgeY } = side;
  const runs: { kind: EdgeKind; from: number; to: number }[] = [];
  for (let i = 0; i < edgeX.length; i++) {
    if (!Number.isFinite(edgeX[i])) continue;
    const kind = edgeKindAt(side, i);
    const last = runs.at(-1);
    const joined = last?.to === i - 1 && Math.hypot(edgeX[i] - edgeX[i - 1], edgeY[i] - edgeY[i - 1]) <= JUMP_M;
    if (last && joined) last.to = i;
    if (!last || !joined || last.kind !== kind) runs.push({ kind, from: i, to: i });
  }
  return runs.filter(({ from, to }) => to > from);
}

/** The pieces of one drop edge between stations `from` and `to`. */
function* classified(
  inputs: RoadsideInputs,
  bench: Bench,
  side: Side,
  from: number,
  to: number,
): Generator<void, RoadsidePiece[]> {
  const count = Math.max(1, Math.ceil((to - from) / inputs.everyM));
  const stations = Array.from({ length: count + 1 }, (_, k) => Math.round(from + ((to - from) * k) / count));
  const readings: Reading[] = [];
  for (const i of stations) {
    readings.push(readingAt(inputs, bench, side, i));
    yield;
  }
  const pieces: (Reading & { from: number; to: number })[] = [];
  for (let k = 0; k < count; k++) {
    const worse = worseOf(readings[k], readings[k + 1]);
    const last = pieces.at(-1);
    if (last && last.planAs === worse.planAs && last.undecided === worse.undecided) last.to = stations[k + 1];
    else pieces.push({ ...worse, from: stations[k], to: stations[k + 1] });
  }
  return pieces.map(({ planAs, undecided, ...at }) => ({
    side,
    planAs,
    undecided,
    line: lineOf(bench[side], at.from, at.to, inputs.ground.plane),
  }));
}

function readingAt(inputs: RoadsideInputs, bench: Bench, side: Side, i: number): Reading {
  const { roads, marks, route, rule } = inputs;
  const { ground } = withLikelyKind(inputs.ground, bench, i);
  const place = placeOn(route, bench, i, ground.plane);
  const angle = workUpSide({ ground, roads, marks, patient: null, rule }, bench, place, i, side).descent?.angle;
  return angle ? { planAs: angle.planAs, undecided: angle.class === 'undecided' } : { planAs: null, undecided: false };
}

function placeOn(route: Route, bench: Bench, i: number, plane: LocalPlane): RoadPlace {
  const stationM = bench.firstStationM + i;
  const leg = legAt(route, stationM);
  const position: LonLat = plane.toLonLat({ x: bench.x[i], y: bench.y[i] });
  return { route, leg, way: leg.way, stationM, position, offsetM: 0 };
}

function worseOf(a: Reading, b: Reading): Reading {
  const [less, more] = steeper.indexOf(a.planAs) <= steeper.indexOf(b.planAs) ? [a, b] : [b, a];
  if (less.planAs === null) return { planAs: more.planAs, undecided: more.planAs !== null };
  if (less.planAs === more.planAs) return { planAs: more.planAs, undecided: a.undecided || b.undecided };
  return more;
}

function lineOf({ edgeX, edgeY }: BenchSide, from: number, to: number, plane: LocalPlane): Float64Array {
  const line = new Float64Array(2 * (to - from + 1));
  for (let i = from; i <= to; i++) {
    const { lon, lat } = plane.toLonLat({ x: edgeX[i], y: edgeY[i] });
    line[2 * (i - from)] = lon;
    line[2 * (i - from) + 1] = lat;
  }
  return line;
}
