import { SITE_M } from '../layout-sites.ts';
import type { End } from './parked.ts';
import {
  apartM,
  cornersOf,
  distance,
  inTriangle,
  type Point,
  placeAt,
  pointAt,
  type Rect,
  rightAt,
  segmentToRectM,
} from './plane.ts';
import type { TwinRoad } from './road.ts';

/** Rules of a layout on the ground, each by trigonometry of its own. `spareM` and `spareDeg` are kept beyond each rule. */
export interface Spare {
  readonly m: number;
  readonly deg: number;
}

export const degrees = (a: Point, b: Point): number =>
  (Math.acos(Math.max(-1, Math.min(1, (a.x * b.x + a.y * b.y) / (Math.hypot(a.x, a.y) * Math.hypot(b.x, b.y))))) *
    180) /
  Math.PI;
export const from = (a: Point, b: Point): Point => ({ x: b.x - a.x, y: b.y - a.y });

export const edgeOf = (road: TwinRoad): Point => pointAt(road, SITE_M, road.rightM(SITE_M));
export const backOf = (road: TwinRoad): Point => {
  const n = rightAt(road, SITE_M);
  return { x: -n.x, y: -n.y };
};

/** Distance from a point to the edge as a curve, metres. */
export function behindEdgeM(road: TwinRoad, p: Point): number {
  const awayM = (s: number): number => distance(pointAt(road, s, road.rightM(s)), p);
  let nearest = SITE_M - 12;
  for (let s = SITE_M - 12; s <= SITE_M + 12; s += 0.1) if (awayM(s) < awayM(nearest)) nearest = s;
  // Between two of them it may come nearer by half a millimetre.
  let least = Number.POSITIVE_INFINITY;
  for (let s = nearest - 0.1; s <= nearest + 0.1; s += 0.002) least = Math.min(least, awayM(s));
  return least;
}

const at = new Float64Array(2);

/** True where both long sides of the 2 m about a way lie inside the usable edges, every quarter of a metre. */
export function corridorInside(road: TwinRoad, a: Point, b: Point, spareM: number): boolean {
  const long = distance(a, b);
  const n = Math.max(1, Math.ceil(long / 0.25));
  const [nx, ny] = [(b.y - a.y) / long, -(b.x - a.x) / long];
  // Ends and middle first: most that leave the bench leave it there.
  for (const k of [0, n, Math.round(n / 2), ...Array(n).keys()]) {
    for (const side of [-1, 1]) {
      placeAt(road, a.x + ((b.x - a.x) * k) / n + side * nx, a.y + ((b.y - a.y) * k) / n + side * ny, at);
      const [s, q] = [at[0]!, at[1]!];
      if (-q > road.leftM(s) - (road.leftFalls ? 1 : 0.5) - spareM || q > usableRightM(road, s, spareM) - spareM)
        return false;
    }
  }
  return true;
}

/** With something to spare the least of two stations: the twin never stands where a straight line between them would not. */
const usableRightM = (road: TwinRoad, s: number, spareM: number): number =>
  (road.turnout && spareM > 0 ? Math.min(road.rightM(Math.floor(s)), road.rightM(Math.ceil(s))) : road.rightM(s)) - 1;

/** The 2 m about a way as a rectangle. */
export function corridorOf(a: Point, b: Point): Rect {
  const long = distance(a, b);
  return {
    ...{ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, ux: (b.x - a.x) / long, uy: (b.y - a.y) / long },
    ...{ halfLengthM: long / 2, halfWidthM: 1 },
  };
}

/** What is wrong with the way from a bend to an anchor, whatever holds the bend; null where nothing is. */
export function legFault(road: TwinRoad, bend: Point, anchor: End, spare: Spare): string | null {
  const leg = from(bend, anchor);
  if (Math.hypot(leg.x, leg.y) < 3.5 + spare.m) return 'field too short';
  if (degrees({ x: anchor.outX, y: anchor.outY }, { x: -leg.x, y: -leg.y }) > 45 - spare.deg)
    return 'anchor faces away';
  const { rect } = anchor.parked;
  const short = { ...rect, halfLengthM: rect.halfLengthM - 0.05, halfWidthM: rect.halfWidthM - 0.05 };
  if (segmentToRectM(short, bend, anchor) <= 0) return 'hauling leg through the anchor’s body';
  return corridorInside(road, bend, anchor, spare.m) ? null : 'corridor outside the usable edges';
}

/** What is wrong with a turned haul between two parked apparatus beside that; null where nothing is. */
export function turnedFault(road: TwinRoad, turn: End, bend: Point, anchor: End, spare: Spare): string | null {
  const edge = edgeOf(road);
  const tie = from(turn, bend);
  const tieM = Math.hypot(tie.x, tie.y);
  if (!(tieM >= 0.5 + spare.m && tieM <= 4 - spare.m)) return 'tie too short or too long';
  if (degrees(tie, { x: turn.outX, y: turn.outY }) > 69.5 - spare.deg) return 'tie along the body';
  const [u1, u2] = [from(bend, edge), from(bend, anchor)];
  const [n1, n2] = [Math.hypot(u1.x, u1.y), Math.hypot(u2.x, u2.y)];
  const pull = { x: u1.x / n1 + u2.x / n2 / 0.9, y: u1.y / n1 + u2.y / n2 / 0.9 };
  if (degrees(tie, pull) > 20 - spare.deg) return 'tie off the resultant';
  const [a, b] = [turn.parked.rect, anchor.parked.rect];
  for (const corner of [...cornersOf(a), ...cornersOf(b)]) {
    if (inTriangle(corner, edge, bend, anchor)) return 'body in the keep-out';
  }
  if (segmentToRectM(a, edge, bend) < 0.3 + spare.m) return 'first leg along the turn’s body';
  if (segmentToRectM(a, bend, anchor) < 0.3 + spare.m) return 'hauling leg along the turn’s body';
  const mayTouch = distance(a, b) < 2 * Math.hypot(a.halfLengthM, a.halfWidthM) + 1;
  return mayTouch && apartM(a, b) < 0.5 + spare.m ? 'apparatus too near each other' : null;
}

/** What is wrong with a bend by itself. */
export function bendFault(road: TwinRoad, bend: Point, mostDeg: number, spare: Spare): string | null {
  if (degrees(from(edgeOf(road), bend), backOf(road)) > mostDeg - spare.deg) return 'bend far from the descent';
  return behindEdgeM(road, bend) < 2.5 - 1e-6 + Math.min(0, spare.m) ? 'bend too near the edge' : null;
}

/** What is wrong with the anchor of a straight haul. */
export function straightFault(road: TwinRoad, anchor: End, spare: Spare): string | null {
  const edge = edgeOf(road);
  const to = from(edge, anchor);
  if (degrees(to, backOf(road)) > 10 - spare.deg) return 'anchor far from the descent';
  const fieldM = Math.hypot(to.x, to.y);
  if (fieldM < 3.5 + spare.m || fieldM > 30) return 'field too short or too long';
  if (degrees({ x: -to.x, y: -to.y }, { x: anchor.outX, y: anchor.outY }) > 99.7 - spare.deg)
    return 'rope across the body';
  const rect = anchor.parked.rect;
  const short = { ...rect, halfLengthM: rect.halfLengthM - 0.05, halfWidthM: rect.halfWidthM - 0.05 };
  return segmentToRectM(short, edge, anchor) <= 0 ? 'rope through the body' : null;
}
