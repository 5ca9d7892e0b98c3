import type { PointM } from '../../geo/index.ts';
import {
  type ApparatusAnchor,
  type Conditions,
  type HoldSettings,
  holdKn,
  type PlanVector,
  tireFriction,
} from '../../rigging/index.ts';
import { toRadians } from '../../units/index.ts';
import { type BendRay, bendRays, raysWithin } from './bend-rays.ts';
import type { HaulFrame } from './haul-frame.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';
import type { Means } from './means.ts';
import { holdCounts } from './rank.ts';
import type { Stand } from './stands.ts';
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

/** The second leg may leave the road's direction by about this: beyond it the tie of no anchor fits. */
const LEG_SLACK_DEG = 8;
/**
 * Where a main line may bend when it is held from a tie and hauled along the road: near the descent's line, far enough behind
 * the edge, the tie neither too short nor too long and within reach of the resultant of both legs. The nearest to the edge whose tie
 * fits well, and one still nearer whose tie fits some anchors: rope, friction and way are least there; the nearest that takes no lane
 * more than the apparatus does; and on a grade where the hold counts the one that the apparatus holds best. `wide` seeks those more
 * than 10° off the line, where the rope also bends in plan at the edge.
 *
 * ```
 *     tie ●
 *          ╲        field along the road
 *           ◦ bend ─────────────────────→ anchor
 *           │
 *   ────────●─ edge
 * ```
 */
export function bendsFor(
  frame: HaulFrame,
  { tie, lanes }: Pick<Stand, 'tie' | 'lanes'>,
  along: -1 | 1,
  { rates, conditions }: Pick<Means, 'rates' | 'conditions'>,
  wide: boolean,
): Bend[] {
  const { edge } = frame;
  const rays = bendRays(frame, along, rates.pulleyEfficiency, wide);
  const { well, perhaps } = nearestOn(rays, edge, tie);
  const bends = well === null ? [] : [well];
  if (perhaps !== null && (well === null || perhaps.toEdgeM < well.toEdgeM)) bends.push(perhaps);
  const add = (bend: Bend | null): void => {
    if (bend !== null && !bends.some(({ x, y }) => x === bend.x && y === bend.y)) bends.push(bend);
  };
  if (tie.anchor.kind !== 'apparatus' || bends.length === 0) return bends;
  const sparing = raysWithin(rays, lanes);
  if (sparing !== rays) {
    const spares = nearestOn(sparing, edge, tie);
    add(spares.well ?? spares.perhaps);
  }
  if (well !== null && !wide && holdCounts(frame.grade)) {
    const steadiest = bySteadiness(rays, tie.anchor, conditions, rates);
    for (let k = 0, found = false; k < steadiest.length && !found; k++) {
      const steady = nearestOn([steadiest[k]], edge, tie).well;
      found = steady !== null;
      add(steady);
    }
  }
  return bends;
}

/** Rays by how well an apparatus at the turn holds their resultant, best first. */
function bySteadiness(
  rays: readonly BendRay[],
  { emptyMassKg, fall }: ApparatusAnchor,
  conditions: Conditions,
  settings: HoldSettings,
): BendRay[] {
  const friction = tireFriction(conditions, settings) ?? 0;
  return rays
    .map((ray) => ({ ray, factor: holdKn(emptyMassKg, friction, settings.brakedShare, fall, ray.pull) / ray.pullKn }))
    .sort((a, b) => b.factor - a.factor)
    .map(({ ray }) => ray);
}

/** Of the bends on some rays the nearest to the edge whose tie fits any anchor, and whose tie fits some. */
function nearestOn(
  rays: readonly BendRay[],
  edge: PointM,
  tie: TiePlace,
): { readonly well: Bend | null; readonly perhaps: Bend | null } {
  let well: Bend | null = null;
  let perhaps: Bend | null = null;
  for (const ray of rays) {
    for (const d of ray.atM) {
      if (well !== null && d >= well.toEdgeM) break;
      const x = edge.x + ray.x * d;
      const y = edge.y + ray.y * d;
      const dx = x - tie.x;
      const dy = y - tie.y;
      const square = dx * dx + dy * dy;
      if (square < LEAST_SQUARE || square > MOST_SQUARE) continue;
      const tieM = Math.sqrt(square);
      if (tie.spot !== null && dx * tie.outX + dy * tie.outY < LEAVES_END * tieM) continue;
      const cosOff = (dx * ray.pull.x + dy * ray.pull.y) / tieM;
      if (cosOff < PERHAPS_COS) continue;
      const fits = cosOff >= FITS_COS;
      if (!fits && perhaps !== null && perhaps.toEdgeM <= d) continue;
      const towardEdge = { x: -ray.x, y: -ray.y };
      const bend = { x, y, toEdgeM: d, offLineDeg: ray.offLineDeg, towardEdge, tieX: dx / tieM, tieY: dy / tieM };
      if (!fits) perhaps = bend;
      else {
        well = bend;
        break;
      }
    }
  }
  return { well, perhaps };
}

const LEAST_SQUARE = LAYOUT_LIMITS.tieLeastM ** 2;
const MOST_SQUARE = LAYOUT_LIMITS.tieMostM ** 2;
/** A tie leaves the end of an apparatus within about 70° of square, so that it does not lie along the body. */
const LEAVES_END = 0.35;
/** Angle between the tie and the resultant of both legs: fits any anchor, and fits some. */
const FITS_COS = Math.cos(toRadians(LAYOUT_LIMITS.tieOffDeg - LEG_SLACK_DEG / 2));
const PERHAPS_COS = Math.cos(toRadians(LAYOUT_LIMITS.tieOffDeg + LEG_SLACK_DEG));
