import type { Apparatus } from '../../../src/book/index.ts';
import type { RankKey } from '../../../src/spots/index.ts';
import { SITE_M } from '../layout-sites.ts';
import { anchorsUnder, straightLines } from './anchors.ts';
import { backOf, corridorInside, corridorOf, edgeOf, from, straightFault } from './keeps.ts';
import { type Objective, type Placed, worstOf } from './objective.ts';
import { type End, endsOf, lanesOf, type Parked } from './parked.ts';
import { alongAt, cornersOf, distance, type Point, placeAt } from './plane.ts';
import type { TwinRoad } from './road.ts';
import { Sought, SPARE } from './sought.ts';

const ROOM_M = 40;

/** Looks for straight hauls that rank before `best` (null: for any), over every parked end of the grid. */
export function seekStraight(
  road: TwinRoad,
  objective: Objective,
  apparatus: Apparatus,
  atMin: number,
  parked: readonly Parked[],
  best: RankKey | null,
): Sought {
  const sought = new Sought(best);
  const edge = edgeOf(road);
  for (const end of parked.filter(({ stationM }) => Math.abs(stationM - SITE_M) < 15).flatMap(endsOf)) {
    sought.looked++;
    if (straightFault(road, end, SPARE) !== null) continue;
    const fieldM = distance(edge, end);
    const base = { kind: 'straight', toEdgeM: fieldM, fieldM, belayRunM: fieldM, atMin } as const;
    const field = end.parked.lanes | fieldLanes(road, end);
    const behindM = Math.max(0.5, roomBehindM(road, end));
    const hand = handWay(road, end);
    const mains = anchorsUnder(road, apparatus, end.parked);
    for (const rig of objective.rigs()) {
      const plain: Placed = { ...base, handTurns: 0, roomM: behindM, lanes: field };
      const hauled = objective.haul(plain, rig);
      if (!hauled.workable) continue;
      sought.workedOut++;
      const turned = hand !== null && hauled.walkM > behindM + 1e-9 ? hand : null;
      const placed: Placed =
        turned === null
          ? plain
          : {
              ...{ ...plain, handTurns: 1, roomM: turned.roomM },
              lanes: field | handLanes(road, end, turned, hauled.walkM),
            };
      const way = turned?.way ?? null;
      const key = worstOf(mains.map((main) => objective.key(placed, rig, straightLines(main, end, edge, way))));
      if (key === null) continue;
      sought.offer(key, () => {
        const { x, y } = end.parked.rect;
        const where = `anchor ${end.parked.stationM} m (${x.toFixed(2)}, ${y.toFixed(2)}), field ${fieldM.toFixed(2)}`;
        return `${where}, ${rig.system}, hand turns ${placed.handTurns}, walk ${hauled.walkM.toFixed(1)}, room ${placed.roomM.toFixed(1)}, from ${atMin} min`;
      });
    }
  }
  return sought;
}

/** Lanes under the field, from where people stand behind the edge. */
export function fieldLanes(road: TwinRoad, end: Point, touchM?: number): number {
  const [edge, back] = [edgeOf(road), backOf(road)];
  return lanesOf(road, corridorOf({ x: edge.x + 1.6 * back.x, y: edge.y + 1.6 * back.y }, end), touchM);
}

/** Clear way behind the edge straight back, past the apparatus only where a metre beside it is free. */
export function roomBehindM(road: TwinRoad, end: End): number {
  const [edge, back] = [edgeOf(road), backOf(road)];
  if (!mayPass(road, end.parked)) return 0;
  const start = { x: edge.x + 1.6 * back.x, y: edge.y + 1.6 * back.y };
  const to = from(edge, end);
  return clearM(road, start, { x: to.x / Math.hypot(to.x, to.y), y: to.y / Math.hypot(to.x, to.y) });
}

export function clearM(road: TwinRoad, start: Point, way: Point): number {
  let room = 0;
  while (room < ROOM_M) {
    const m = room + 0.5;
    if (!corridorInside(road, start, { x: start.x + m * way.x, y: start.y + m * way.y }, SPARE.m)) break;
    room = m;
  }
  return room;
}

function mayPass(road: TwinRoad, { rect }: Parked): boolean {
  const at = new Float64Array(2);
  let left = Number.POSITIVE_INFINITY;
  let right = Number.POSITIVE_INFINITY;
  for (const { x, y } of cornersOf(rect)) {
    placeAt(road, x, y, at);
    left = Math.min(left, at[1]! + road.leftM(at[0]!) - (road.leftFalls ? 1 : 0.5));
    right = Math.min(right, road.rightM(at[0]!) - 1 - at[1]!);
  }
  return Math.max(left, right) >= 1.01;
}

export interface HandWay {
  readonly way: Point;
  readonly roomM: number;
}

/** Where the hauling end may turn along the road at the anchor's own end: the way with more room. */
export function handWay(road: TwinRoad, end: End): HandWay | null {
  const at = new Float64Array(2);
  placeAt(road, end.x, end.y, at);
  const along = alongAt(road, at[0]!);
  const ways = [1, -1].flatMap((sign) => {
    const way = { x: sign * along.x, y: sign * along.y };
    if (way.x * end.outX + way.y * end.outY < -0.09) return [];
    const roomM = clearM(road, end, way);
    return roomM > 0 ? [{ way, roomM }] : [];
  });
  return ways.sort((a, b) => b.roomM - a.roomM)[0] ?? null;
}

export function handLanes(road: TwinRoad, end: Point, { way, roomM }: HandWay, walkM: number, touchM?: number): number {
  const m = Math.min(walkM, roomM);
  return lanesOf(road, corridorOf(end, { x: end.x + m * way.x, y: end.y + m * way.y }), touchM);
}
