import type { PointM } from '../../geo/index.ts';
import { type PlanVector, unit } from '../../rigging/index.ts';
import { toRadians } from '../../units/index.ts';
import { placeOnBench } from '../bench-place.ts';
import { corridorSight, emptySight, type Sight } from './corridor.ts';
import { behindEdgeM, type HaulFrame } from './haul-frame.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';

/** A place where a main line may bend on its way along the road. */
export interface Bend extends PointM {
  /** From the edge, metres in plan, and the unit vector towards it. */
  readonly toEdgeM: number;
  /** By how much the rope also bends in plan at the edge, degrees; 0 within 10° of the descent's line. */
  readonly offLineDeg: number;
  readonly towardEdge: PlanVector;
  /** Unit vector of the resultant of both legs, the second along the road. */
  readonly pull: PlanVector;
  /** Element of the bench, with fractions, and the offset from the middle of the travelled way, metres. */
  readonly element: number;
  readonly asideM: number;
  /** Ways along the road that stay inside the usable edges. */
  readonly sight: () => Sight;
}

/** Bends near the descent's line, every second of those either way, or those wide of it. */
export type BendChoice = 'near' | 'coarse' | 'wide';

/** Bends are sought on rays from the edge this far apart, at these steps along them, up to here. */
export const RAY_STEP_DEG = 2.5;
export const BEND_STEP_M = 0.25;
const FARTHEST_M = 6;

/**
 * Where a main line may bend, whatever holds it, nearest to the edge first: on rays about the descent's line, far enough behind
 * the edge. 'wide' gives those more than 10° off the line, where the rope also bends in plan at the edge. Those of one frame are
 * worked out once.
 *
 * ```
 *     tie ●
 *          ╲        field along the road
 *           ◦ bend ─────────────────────→ anchor
 *           │
 *   ────────●─ edge
 * ```
 */
export function bendGrid(frame: HaulFrame, along: -1 | 1, efficiency: number, choice: BendChoice): readonly Bend[] {
  const known = kept.get(frame) ?? new Map<string, readonly Bend[]>();
  kept.set(frame, known);
  const key = `${along} ${efficiency} ${choice}`;
  const bends = known.get(key) ?? gridOf(frame, along, efficiency, choice);
  known.set(key, bends);
  return bends;
}

const kept = new WeakMap<HaulFrame, Map<string, readonly Bend[]>>();

function gridOf(frame: HaulFrame, along: -1 | 1, efficiency: number, choice: BendChoice): Bend[] {
  const { nearDescentDeg, bendOffDeg, turnBehindM } = LAYOUT_LIMITS;
  const every = choice === 'coarse' ? 2 : 1;
  const [fromDeg, toDeg] = choice === 'wide' ? [nearDescentDeg + RAY_STEP_DEG, bendOffDeg] : [0, nearDescentDeg];
  const bends: Bend[] = [];
  for (let d = turnBehindM; d <= FARTHEST_M + 1e-9; d += every * BEND_STEP_M) {
    for (let off = fromDeg; off <= toDeg; off += every * RAY_STEP_DEG) {
      for (const rayDeg of off === 0 ? [0] : [off, -off]) bends.push(...bendAt(frame, along, efficiency, rayDeg, d));
    }
  }
  return bends;
}

/** The bend on a ray so many degrees off the descent's line at a distance from the edge; none too near the edge or off the bench. */
export function bendAt(frame: HaulFrame, along: -1 | 1, efficiency: number, rayDeg: number, toEdgeM: number): Bend[] {
  const { bench, edge, back, road } = frame;
  const a = toRadians(rayDeg);
  const ray = { x: back.x * Math.cos(a) - back.y * Math.sin(a), y: back.x * Math.sin(a) + back.y * Math.cos(a) };
  const x = edge.x + ray.x * toEdgeM;
  const y = edge.y + ray.y * toEdgeM;
  if (!(behindEdgeM(frame, x, y) >= LAYOUT_LIMITS.turnBehindM - 1e-9)) return [];
  const at = new Float64Array(2);
  if (!placeOnBench(bench, x, y, frame.element, at)) return [];
  const [element, offsetM] = at;
  const asideM = offsetM - bench.shiftM[Math.round(element)];
  const way = { x: along * road.x, y: along * road.y };
  let sight: Sight | null = null;
  return [
    {
      ...{ x, y, toEdgeM, element, asideM },
      offLineDeg: Math.abs(rayDeg) > LAYOUT_LIMITS.nearDescentDeg ? Math.abs(rayDeg) : 0,
      towardEdge: { x: -ray.x, y: -ray.y },
      pull: unit({ x: way.x / efficiency - ray.x, y: way.y / efficiency - ray.y }),
      sight: () => {
        sight ??= corridorSight(bench, x, y, element, along, way, emptySight(bench.count));
        return sight;
      },
    },
  ];
}
