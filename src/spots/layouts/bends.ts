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
  /** By how much the rope also bends in plan at the edge, degrees; 0 within 10° of the descent's line. */
  readonly offLineDeg: number;
  readonly towardEdge: PlanVector;
  /** Unit vector from what holds it. */
  readonly tieX: number;
  readonly tieY: number;
}

/** Bends are sought on rays from the edge this far apart, at these steps along them, up to here. */
const RAY_STEP_DEG = 2.5;
const STEP_M = 0.25;
const FARTHEST_M = 6;
/** The second leg may leave the road's direction by about this: beyond it the tie of no anchor fits. */
const LEG_SLACK_DEG = 8;
/**
 * Where a main line may bend when it is held from a tie and hauled along the road: near the descent's line, far enough behind
 * the edge, the tie neither too short nor too long and within reach of the resultant of both legs. The nearest to the edge whose tie
 * fits well, and one still nearer whose tie fits some anchors: rope, friction and way are least there. `wide` seeks those more than
 * 10° off the line, where the rope also bends in plan at the edge.
 *
 * ```
 *     tie ●
 *          ╲        field along the road
 *           ◦ bend ─────────────────────→ anchor
 *           │
 *   ────────●─ edge
 * ```
 */
export function bendsFor(frame: HaulFrame, tie: TiePlace, along: -1 | 1, efficiency: number, wide: boolean): Bend[] {
  const { nearDescentDeg, bendOffDeg } = LAYOUT_LIMITS;
  return wide
    ? bendsOn(frame, tie, along, efficiency, nearDescentDeg + RAY_STEP_DEG, bendOffDeg)
    : bendsOn(frame, tie, along, efficiency, 0, nearDescentDeg);
}

function bendsOn(
  frame: HaulFrame,
  tie: TiePlace,
  along: -1 | 1,
  efficiency: number,
  fromDeg: number,
  toDeg: number,
): Bend[] {
  const { edge, back, road } = frame;
  const leg = { x: along * road.x, y: along * road.y };
  let well: Bend | null = null;
  let perhaps: Bend | null = null;
  for (let offAxis = fromDeg; offAxis <= toDeg; offAxis += RAY_STEP_DEG) {
    for (const rayDeg of offAxis === 0 ? [0] : [offAxis, -offAxis]) {
      const a = toRadians(rayDeg);
      const ray = { x: back.x * Math.cos(a) - back.y * Math.sin(a), y: back.x * Math.sin(a) + back.y * Math.cos(a) };
      const pull = unit({ x: leg.x / efficiency - ray.x, y: leg.y / efficiency - ray.y });
      const most = Math.min(FARTHEST_M, (well?.toEdgeM ?? FARTHEST_M + STEP_M) - STEP_M);
      for (let d = LAYOUT_LIMITS.turnBehindM; d <= most + 1e-9; d += STEP_M) {
        const x = edge.x + ray.x * d;
        const y = edge.y + ray.y * d;
        const off = tieOff(tie, x, y, pull);
        if (off === null) continue;
        const fits = off.offDeg <= LAYOUT_LIMITS.tieOffDeg - LEG_SLACK_DEG / 2;
        if (!fits && perhaps !== null && perhaps.toEdgeM <= d) continue;
        if (!(behindEdgeM(frame, x, y) >= LAYOUT_LIMITS.turnBehindM - 1e-9)) continue;
        const offLineDeg = fromDeg === 0 ? 0 : offAxis;
        const towardEdge = { x: -ray.x, y: -ray.y };
        const bend = { x, y, toEdgeM: d, offLineDeg, towardEdge, tieX: off.x, tieY: off.y };
        if (!fits) perhaps = bend;
        else {
          well = bend;
          break;
        }
      }
    }
  }
  const nearer = perhaps !== null && (well === null || perhaps.toEdgeM < well.toEdgeM) ? [perhaps] : [];
  return well === null ? nearer : [well, ...nearer];
}

/** Unit vector of a tie to a bend, and how far it lies off the resultant, degrees; null where no such tie can be made. */
function tieOff(
  tie: TiePlace,
  x: number,
  y: number,
  pull: PlanVector,
): { x: number; y: number; offDeg: number } | null {
  const dx = x - tie.x;
  const dy = y - tie.y;
  const tieM = Math.sqrt(dx * dx + dy * dy);
  if (tieM < LAYOUT_LIMITS.tieLeastM || tieM > LAYOUT_LIMITS.tieMostM) return null;
  if (tie.spot !== null && dx * tie.outX + dy * tie.outY < LEAVES_END * tieM) return null;
  const offDeg = offBy(dx / tieM, dy / tieM, pull);
  return offDeg > LAYOUT_LIMITS.tieOffDeg + LEG_SLACK_DEG ? null : { x: dx / tieM, y: dy / tieM, offDeg };
}

/** A tie leaves the end of an apparatus within about 70° of square, so that it does not lie along the body. */
const LEAVES_END = 0.35;

/** Angle between the tie and the resultant of both legs, degrees. */
function offBy(tieX: number, tieY: number, pull: PlanVector): number {
  return (Math.acos(Math.max(-1, Math.min(1, tieX * pull.x + tieY * pull.y))) * 180) / Math.PI;
}
