import type { PointM } from '../geo/index.ts';
import {
  type Bench,
  benchInput,
  defaultSetbacks,
  EDGE_KINDS,
  type EdgeKind,
  findBench,
  type RoadIndex,
} from '../road/index.ts';
import { type Ground, heightAt } from '../terrain/index.ts';
import type { RoadFoot } from './road-feet.ts';

/** The end of the road bench on the side toward a place. */
export interface EdgeToward {
  readonly at: PointM;
  readonly heightM: number;
  readonly side: 'left' | 'right';
  readonly kind: EdgeKind;
  /** False where the ground does not show the bench and half a road's width was taken. */
  readonly found: boolean;
}

/** Bench looked at either way of the foot, metres: drops are told where about ten stations agree. */
const HALF_M = 60;
/** Half a road where the bench is not seen, metres (practice). */
const HALF_ROAD_M = 3.5;

/** The bench's end toward a place, at a foot of a road; null where the road has no heights there. */
export function edgeToward(ground: Ground, roads: RoadIndex, foot: RoadFoot, place: PointM): EdgeToward | null {
  const { route, stationM, at, along } = foot;
  const toPlace = { x: place.x - at.x, y: place.y - at.y };
  // Right of the drawing is (along.y, −along.x).
  const side = toPlace.x * along.y - toPlace.y * along.x >= 0 ? 'right' : 'left';
  const sign = side === 'right' ? 1 : -1;
  if (Number.isNaN(heightAt(ground, at.x, at.y))) return null;
  const bench = findBench(
    benchInput(roads, route, ground, [], defaultSetbacks, stationM, HALF_M),
    Math.max(0, stationM - HALF_M),
    Math.min(route.lengthM, stationM + HALF_M),
  );
  const seen = bench ? endAt(bench, stationM, side) : null;
  if (seen) return { ...seen, side, found: bench!.how === 'computed' };
  const edge = { x: at.x + sign * HALF_ROAD_M * along.y, y: at.y - sign * HALF_ROAD_M * along.x };
  const heightM = heightAt(ground, edge.x, edge.y);
  return Number.isNaN(heightM) ? null : { at: edge, heightM, side, kind: 'none', found: false };
}

function endAt(bench: Bench, stationM: number, side: 'left' | 'right') {
  const i = Math.min(bench.count - 1, Math.max(0, Math.round(stationM) - bench.firstStationM));
  const own = bench[side];
  const heightM = own.edgeHeightM[i]!;
  if (!Number.isFinite(own.edgeX[i]!) || !Number.isFinite(heightM)) return null;
  return { at: { x: own.edgeX[i]!, y: own.edgeY[i]! }, heightM, kind: EDGE_KINDS[own.kind[i]!]! };
}
