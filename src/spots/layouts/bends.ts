import type { PointM } from '../../geo/index.ts';
import { type PlanVector, unit } from '../../rigging/index.ts';
import { toRadians } from '../../units/index.ts';
import { behindEdgeM, type HaulFrame } from './haul-frame.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';
import type { TiePlace } from './tie-places.ts';

/** A place for a change of direction, held by a tie from an anchor. */
export interface Bend extends PointM {
  /** From the edge, metres in plan, and the unit vector towards it. */
  readonly toEdgeM: number;
  readonly towardEdge: PlanVector;
  /** Unit vector from what holds it. */
  readonly tieX: number;
  readonly tieY: number;
}

/** Bends are sought on rays from the edge this far apart, at these steps along them, up to here. */
const RAYS_DEG = [0, 2.5, -2.5, 5, -5, 7.5, -7.5, 10, -10];
const STEP_M = 0.1;
const FARTHEST_M = 6;
/** The second leg may leave the road's direction by about this: beyond it the tie of no anchor fits. */
const LEG_SLACK_DEG = 8;
/** What is lifted by hand counts by whole metres: in each such class of distance the best tie is kept. */
const CLASSES_M = [3, 4, 5, Number.POSITIVE_INFINITY];

/**
 * Where a main line may bend when it is held from a tie and hauled along the road: near the descent's line, far enough behind
 * the edge, the tie neither too short nor too long and within reach of the resultant of both legs. One a class of distance
 * from the edge: nearest of those whose tie fits well, else the one whose tie fits best.
 *
 * ```
 *     tie ●
 *          ╲        field along the road
 *           ◦ bend ─────────────────────→ anchor
 *           │
 *   ────────●─ edge
 * ```
 */
export function bendsFor(frame: HaulFrame, tie: TiePlace, along: -1 | 1, efficiency: number): Bend[] {
  const { edge, back, road } = frame;
  const leg = { x: along * road.x, y: along * road.y };
  const best: ({ bend: Bend; offDeg: number } | null)[] = CLASSES_M.map(() => null);
  for (const rayDeg of RAYS_DEG) {
    const a = toRadians(rayDeg);
    const ray = { x: back.x * Math.cos(a) - back.y * Math.sin(a), y: back.x * Math.sin(a) + back.y * Math.cos(a) };
    const pull = unit({ x: leg.x / efficiency - ray.x, y: leg.y / efficiency - ray.y });
    for (let k = Math.round(LAYOUT_LIMITS.turnBehindM / STEP_M); k <= FARTHEST_M / STEP_M; k++) {
      const d = k * STEP_M;
      const x = edge.x + ray.x * d;
      const y = edge.y + ray.y * d;
      const tieM = Math.hypot(x - tie.x, y - tie.y);
      if (tieM < LAYOUT_LIMITS.tieLeastM || tieM > LAYOUT_LIMITS.tieMostM) continue;
      const tieX = (x - tie.x) / tieM;
      const tieY = (y - tie.y) / tieM;
      if (tie.spot !== null && tieX * tie.outX + tieY * tie.outY < LEAVES_END) continue;
      const offDeg = offBy(tieX, tieY, pull);
      if (offDeg > LAYOUT_LIMITS.tieOffDeg + LEG_SLACK_DEG) continue;
      const c = CLASSES_M.findIndex((most) => d < most - 1e-9);
      const held = best[c];
      const fits = offDeg <= LAYOUT_LIMITS.tieOffDeg - LEG_SLACK_DEG / 2;
      const heldFits = held !== null && held.offDeg <= LAYOUT_LIMITS.tieOffDeg - LEG_SLACK_DEG / 2;
      if (held !== null && (heldFits ? !fits || d >= held.bend.toEdgeM : !fits && offDeg >= held.offDeg)) continue;
      if (!(behindEdgeM(frame, x, y) >= LAYOUT_LIMITS.turnBehindM - 1e-9)) continue;
      best[c] = { bend: { x, y, toEdgeM: d, towardEdge: { x: -ray.x, y: -ray.y }, tieX, tieY }, offDeg };
    }
  }
  return best.flatMap((one) => (one === null ? [] : [one.bend]));
}

/** A tie leaves the end of an apparatus within about 70° of square, so that it does not lie along the body. */
const LEAVES_END = 0.35;

/** Angle between the tie and the resultant of both legs, degrees. */
export function offBy(tieX: number, tieY: number, pull: PlanVector): number {
  return (Math.acos(Math.max(-1, Math.min(1, tieX * pull.x + tieY * pull.y))) * 180) / Math.PI;
}
