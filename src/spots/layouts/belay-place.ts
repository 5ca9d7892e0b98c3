import type { PointM } from '../../geo/index.ts';
import { dot } from '../../rigging/index.ts';
import { toRadians } from '../../units/index.ts';
import { boxOf, segmentHitsBox } from '../box-hit.ts';
import type { Spot } from '../spot-types.ts';
import type { BelayPlace } from './candidate.ts';
import { behindEdgeM, type HaulFrame } from './haul-frame.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';
import type { Stand } from './stands.ts';
import type { TiePlace } from './tie-places.ts';

/** What a belay must keep clear of: the rope's last bend before the edge, the anchor that it is hauled to, parked apparatus. */
export interface BelaySituation {
  readonly bend: PointM;
  /** Null in a straight haul. */
  readonly anchor: PointM | null;
  readonly spots: readonly Spot[];
  /** Ids that other lines are tied to. */
  readonly usedIds: readonly string[];
}

/** The belay on the anchor that holds the main line at the edge, with a tie of its own. */
export const ownBelay = (tie: TiePlace, kind: 'straight' | 'turned', toBendM: number): BelayPlace => ({
  ...{ tie, unit: null, lanes: 0, atMin: 0 },
  runM: kind === 'turned' ? ownBelayM(toBendM) : toBendM,
});

/** Its rope from the edge where the main line bends, metres. */
export const ownBelayM = (toBendM: number): number => toBendM + LAYOUT_LIMITS.belayAsideM;

/** What may hold a belay by itself. */
export type BelayHolder = Pick<Stand, 'tie' | 'unit' | 'lanes'>;

/** A belay with an anchor of its own; what stands there for it comes, and takes its lanes. */
export const belayAlone = ({ edge }: Pick<HaulFrame, 'edge'>, { tie, unit, lanes }: BelayHolder): BelayPlace => ({
  ...{ tie, unit, lanes, atMin: unit?.atMin ?? 0 },
  runM: Math.hypot(tie.x - edge.x, tie.y - edge.y),
});

/**
 * Those of a list that could hold the belay by themselves, nearest to the edge first: roughly in line with the descent, on the
 * side away from the haul, their line free of parked apparatus.
 */
export function separateBelays(
  frame: HaulFrame,
  holders: readonly BelayHolder[],
  situation: BelaySituation,
): BelayPlace[] {
  return holders
    .filter(({ tie }) => !situation.usedIds.includes(tie.id) && mayBelay(frame, tie, situation))
    .map((holder) => belayAlone(frame, holder))
    .sort((a, b) => a.runM - b.runM);
}

/** True where a belay line from a tie runs straight over the edge past everything else in the layout. */
export function mayBelay(frame: HaulFrame, tie: TiePlace, { bend, anchor, spots }: BelaySituation): boolean {
  const { edge, back } = frame;
  const to = { x: tie.x - edge.x, y: tie.y - edge.y };
  const lengthM = Math.hypot(to.x, to.y);
  if (
    lengthM > LAYOUT_LIMITS.belayMostM ||
    !(dot(to, back) >= lengthM * Math.cos(toRadians(LAYOUT_LIMITS.belayOffDeg)))
  ) {
    return false;
  }
  if (!(behindEdgeM(frame, tie.x, tie.y) >= LEAST_BEHIND_M)) return false;
  if (anchor !== null) {
    const leg = { x: bend.x - edge.x, y: bend.y - edge.y };
    const cross = (v: PointM): number => leg.x * v.y - leg.y * v.x;
    if (cross(to) * cross({ x: anchor.x - edge.x, y: anchor.y - edge.y }) > 0) return false;
  }
  // A rope tied to an apparatus touches its end; anything deeper runs through it.
  return spots.every((spot) => !segmentHitsBox(boxOf(spot.footprint), -TOUCH_M, edge.x, edge.y, tie.x, tie.y));
}

const LEAST_BEHIND_M = 1;
const TOUCH_M = 0.05;
