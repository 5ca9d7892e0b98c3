import { type PlanVector, unit } from '../../rigging/index.ts';
import { toRadians } from '../../units/index.ts';
import { placeOnBench } from '../bench-place.ts';
import { behindEdgeM, type HaulFrame } from './haul-frame.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';
import { bitsBetween, laneGrid } from './people-there.ts';

/** Bends are sought on rays from the edge this far apart, at these steps along them, up to here. */
const RAY_STEP_DEG = 2.5;
const FARTHEST_M = 6;
export const BEND_STEP_M = 0.25;

/** A ray from the edge back over the bench on which a main line may bend. */
export interface BendRay extends PlanVector {
  /** Unit vector of the resultant of both legs, the second along the road. */
  readonly pull: PlanVector;
  /** The resultant for a main line under 1 kN at the edge. */
  readonly pullKn: number;
  /** By how much the rope also bends in plan at the edge, degrees. */
  readonly offLineDeg: number;
  /** Distances from the edge at which it lies far enough behind it, ascending, metres. */
  readonly atM: readonly number[];
  /** At each of them, as bits, the lanes that a corridor along the road would take. */
  readonly lanes: readonly number[];
}

/** The rays for one way along the road, nearest to the descent's line first; those of one frame are worked out once. */
export function bendRays(frame: HaulFrame, along: -1 | 1, efficiency: number, wide: boolean): readonly BendRay[] {
  const known = kept.get(frame) ?? new Map<string, readonly BendRay[]>();
  kept.set(frame, known);
  const key = `${along} ${efficiency} ${wide}`;
  const rays = known.get(key) ?? raysOf(frame, along, efficiency, wide);
  known.set(key, rays);
  return rays;
}

const kept = new WeakMap<HaulFrame, Map<string, readonly BendRay[]>>();

function raysOf(frame: HaulFrame, along: -1 | 1, efficiency: number, wide: boolean): BendRay[] {
  const { edge, back, road } = frame;
  const { nearDescentDeg, bendOffDeg, turnBehindM } = LAYOUT_LIMITS;
  const [fromDeg, toDeg] = wide ? [nearDescentDeg + RAY_STEP_DEG, bendOffDeg] : [0, nearDescentDeg];
  const rays: BendRay[] = [];
  for (let offAxis = fromDeg; offAxis <= toDeg; offAxis += RAY_STEP_DEG) {
    for (const rayDeg of offAxis === 0 ? [0] : [offAxis, -offAxis]) {
      const a = toRadians(rayDeg);
      const x = back.x * Math.cos(a) - back.y * Math.sin(a);
      const y = back.x * Math.sin(a) + back.y * Math.cos(a);
      const both = { x: (along * road.x) / efficiency - x, y: (along * road.y) / efficiency - y };
      const atM: number[] = [];
      const lanes: number[] = [];
      for (let d = turnBehindM; d <= FARTHEST_M + 1e-9; d += BEND_STEP_M) {
        if (!(behindEdgeM(frame, edge.x + x * d, edge.y + y * d) >= turnBehindM - 1e-9)) continue;
        atM.push(d);
        lanes.push(corridorLanes(frame, edge.x + x * d, edge.y + y * d));
      }
      rays.push({
        x,
        y,
        pull: unit(both),
        pullKn: Math.hypot(both.x, both.y),
        offLineDeg: wide ? offAxis : 0,
        atM,
        lanes,
      });
    }
  }
  return rays;
}

/** The same rays where a corridor takes no other lanes than some, bits; the very same list where none is left out. */
export function raysWithin(rays: readonly BendRay[], taken: number): readonly BendRay[] {
  const known = keptWithin.get(rays) ?? new Map<number, readonly BendRay[]>();
  keptWithin.set(rays, known);
  const some = known.get(taken) ?? withinOf(rays, taken);
  known.set(taken, some);
  return some;
}

const keptWithin = new WeakMap<readonly BendRay[], Map<number, readonly BendRay[]>>();

function withinOf(rays: readonly BendRay[], taken: number): readonly BendRay[] {
  if (rays.every(({ lanes }) => lanes.every((bits) => (bits & ~taken) === 0))) return rays;
  return rays.map((ray) => {
    const fits = (k: number): boolean => (ray.lanes[k] & ~taken) === 0;
    return { ...ray, atM: ray.atM.filter((_, k) => fits(k)), lanes: ray.lanes.filter((_, k) => fits(k)) };
  });
}

function corridorLanes({ bench, ground, element }: HaulFrame, x: number, y: number): number {
  const at = new Float64Array(2);
  if (!placeOnBench(bench, x, y, element, at)) return 0;
  const asideM = at[1] - bench.shiftM[Math.round(at[0])];
  const half = LAYOUT_LIMITS.corridorM / 2;
  return bitsBetween(laneGrid(ground.traits), asideM - half, asideM + half);
}
