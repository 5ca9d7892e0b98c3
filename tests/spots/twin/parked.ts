import type { Apparatus } from '../../../src/book/index.ts';
import { SITE_M } from '../layout-sites.ts';
import { alongAt, outlineOf, overlap, type Point, placeAt, pointAt, type Rect, rightAt, toRectM } from './plane.ts';
import type { TwinRoad } from './road.ts';

/** A place to park, with what it takes of the lanes, one bit each from the left. */
export interface Parked {
  readonly rect: Rect;
  readonly stationM: number;
  readonly lanes: number;
}

/** An end of a parked apparatus: where it is tied to and which way it faces. */
export interface End extends Point {
  readonly parked: Parked;
  readonly outX: number;
  readonly outY: number;
}

/** Stations and offsets of the grid, metres. */
const STATION_M = 1;
const OFFSET_M = 0.25;
const REACH_M = 60;

/** Every place of the grid where an apparatus can stand, parallel to the road and nose-in. */
export function parkedOn(road: TwinRoad, apparatus: Apparatus): Parked[] {
  const found: Parked[] = [];
  const [halfLengthM, halfWidthM] = [apparatus.lengthM / 2, apparatus.widthM / 2];
  for (let s = SITE_M - REACH_M; s <= SITE_M + REACH_M; s += STATION_M) {
    const last = Math.floor(road.rightM(s) / OFFSET_M);
    for (let j = -Math.floor(road.leftM(s) / OFFSET_M); j <= last; j++) {
      for (const along of [alongAt(road, s), rightAt(road, s)]) {
        const at = pointAt(road, s, j * OFFSET_M);
        const rect = { ...at, ux: along.x, uy: along.y, halfLengthM, halfWidthM };
        if (mayStand(road, rect, apparatus.grossMassKg, SPARE_M)) {
          found.push({ rect, stationM: s, lanes: lanesOf(road, rect) });
        }
      }
    }
  }
  return found;
}

/** What is found keeps every rule by this much more, so that no rounding decides. */
const SPARE_M = 0.01;

export const endsOf = (parked: Parked): End[] =>
  [1, -1].map((sign) => {
    const { x, y, ux, uy, halfLengthM } = parked.rect;
    const [outX, outY] = [sign * ux, sign * uy];
    return { x: x + outX * halfLengthM, y: y + outY * halfLengthM, parked, outX, outY };
  });

const at = new Float64Array(2);

/** True where an apparatus keeps its setbacks along its outline, and off the edge and the four metres free at the site. */
export function mayStand(road: TwinRoad, rect: Rect, grossMassKg: number, spareM: number): boolean {
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  for (const { x, y } of outlineOf(rect, 0.5)) {
    placeAt(road, x, y, at);
    const [s, q] = at as unknown as [number, number];
    first = Math.min(first, s);
    last = Math.max(last, s);
    for (const i of [Math.floor(s), Math.ceil(s)]) {
      if (-q > outM(road, -1, i, rect, grossMassKg) - spareM) return false;
      if (q > outM(road, 1, i, rect, grossMassKg) - spareM) return false;
    }
  }
  return !overlap(rect, freeBox(road), -spareM) && offEdges(road, rect, first, last, spareM);
}

/** Four metres along the road by four deep at the site's edge. */
function freeBox(road: TwinRoad): Rect {
  const along = alongAt(road, SITE_M);
  return { ...pointAt(road, SITE_M, road.rightM(SITE_M) - 2), ux: along.x, uy: along.y, halfLengthM: 2, halfWidthM: 2 };
}

/** How far out wheels may stand at a station: the setbacks of the rules for an end that falls or a cut. */
function outM(road: TwinRoad, sign: -1 | 1, s: number, rect: Rect, grossMassKg: number): number {
  const width = sign < 0 ? road.leftM(s) : road.rightM(s);
  if (sign < 0 && !road.leftFalls) return width - 0.5;
  const off = Math.max(onM(road), (grossMassKg > 10_000 ? 2.5 : 1.5) * (road.wet ? 2 : 1));
  const on = Math.min(width - narrowM(road, sign, s, rect), road.halfWayM);
  return Math.min(Math.max(on, width - off), width - 1);
}

const onM = (road: TwinRoad): number => (road.wet && road.gravel ? 2.5 : 1.5);

/** Setback on the carriageway, less in mid-road where the bench is too narrow, never under a metre. */
function narrowM(road: TwinRoad, sign: -1 | 1, s: number, { halfLengthM, halfWidthM }: Rect): number {
  const full = onM(road);
  const swing = (halfLengthM * halfLengthM * Math.abs(road.curvature)) / 2;
  const free = road.leftM(s) + road.rightM(s) - 2 * halfWidthM - swing;
  const bothFall = road.leftFalls || sign < 0;
  return Math.max(1, Math.min(full, (bothFall ? free / 2 : free - 0.5) - 0.25));
}

/** Measured straight, nine tenths of the setback and never under a metre stay to where the ground falls, half a metre to a cut. */
function offEdges(road: TwinRoad, rect: Rect, first: number, last: number, spareM: number): boolean {
  if (!road.turnout) return true;
  for (let s = first - 6; s <= last + 6; s += 0.25) {
    const right = pointAt(road, s, road.rightM(s));
    if (toRectM(rect, right.x, right.y) < Math.max(1, 0.9 * narrowM(road, 1, s, rect)) + spareM) return false;
  }
  return true;
}

/** Lanes that a rectangle reaches into by more than a touch, bits from the left. */
export function lanesOf(road: TwinRoad, rect: Rect, touchM = 1e-6): number {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const { x, y } of outlineOf(rect, 1)) {
    placeAt(road, x, y, at);
    least = Math.min(least, at[1]!);
    most = Math.max(most, at[1]!);
  }
  let bits = 0;
  const laneM = (2 * road.halfWayM) / road.lanes;
  for (let k = 0; k < road.lanes; k++) {
    const from = -road.halfWayM + k * laneM;
    if (Math.min(most, from + laneM) - Math.max(least, from) > touchM) bits |= 1 << k;
  }
  return bits;
}
