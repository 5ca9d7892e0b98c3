import type { RoadTraits, SightBothWays } from '../road/index.ts';
import { FOOT_M } from '../units/index.ts';
import { type LaneUse, laneCount } from './lanes.ts';
import { type PostedSpeed, postedSpeed } from './posted-speed.ts';
import { type SignRoad, signSpacingM } from './sign-spacing.ts';
import { stoppingSightLevelM, stoppingSightM } from './stopping-sight.ts';
import { mergingTaperM, oneLaneTaperM, shoulderTaperM } from './taper.ts';

/** How traffic passes: not at all, in turn on one lane, merged out of a lane, or past a closed shoulder. */
export type ClosureKind = 'road closed' | 'one lane in turn' | 'lane merged' | 'shoulder';

/** Lengths of a formal closure, metres. None of them is what a first crew can set up. */
export interface Closure {
  readonly kind: ClosureKind;
  readonly lanesBlocked: number;
  /** Of each taper; null where the road is closed. */
  readonly taperM: number | null;
  /** From the taper to the nearest advance sign, and on to the second and third. */
  readonly advanceSignsM: readonly [number, number, number];
  /** The longer of both approaches; each is never under the level figure. */
  readonly stoppingSightM: number;
  readonly stoppingSight: { readonly before: number; readonly after: number };
  /** What the road gives, null where it was not measured; `short` names the approaches that give less than stopping takes. */
  readonly sightM: { readonly before: number | null; readonly after: number | null };
  readonly short: readonly ('before' | 'after')[];
  readonly speed: PostedSpeed;
}

/** A lane where its width is only assumed: tapers are then laid out for this, metres (12 ft; common practice, no source). */
const TAPER_LANE_M = 12 * FOOT_M;

/**
 * Closure that goes with lanes blocked by the spots and corridors of a layout (`blockedLanes`), by the published formulas from
 * the posted speed. Without a measured sight an approach counts as short.
 *
 * @param gradeDeg grade of the road at the site, up along the drawing; null where unknown: then as steep as parking allows
 * @param shoulderM width of shoulder taken where no lane is
 */
export function closure(
  traits: RoadTraits,
  lanesBlocked: number,
  gradeDeg: number | null,
  sight: SightBothWays | null,
  shoulderM: number,
  signRoad: SignRoad = 'rural',
): Closure {
  const speed = postedSpeed(traits);
  const level = stoppingSightLevelM(speed.mph);
  // Drivers "before" the site come along the drawing.
  const before = Math.max(level, stoppingSightM(speed.mph, gradeDeg ?? -UNKNOWN_GRADE_DEG));
  const after = Math.max(level, stoppingSightM(speed.mph, gradeDeg === null ? -UNKNOWN_GRADE_DEG : -gradeDeg));
  const sightM = { before: sight?.before.distanceM ?? null, after: sight?.after.distanceM ?? null };
  const kind = closureKind(traits, lanesBlocked);
  const laneM = traits.carriageway.how === 'typed' ? traits.carriageway.valueM / laneCount(traits) : TAPER_LANE_M;
  return {
    kind,
    lanesBlocked,
    taperM: taperFor(kind, speed.mph, laneM, shoulderM),
    advanceSignsM: signSpacingM(signRoad),
    stoppingSightM: Math.max(before, after),
    stoppingSight: { before, after },
    sightM,
    short: [
      ...(enough(sightM.before, before) ? [] : (['before'] as const)),
      ...(enough(sightM.after, after) ? [] : (['after'] as const)),
    ],
    speed,
  };
}

/** Lanes that several footprints block together. */
export const blockedLanes = (uses: readonly LaneUse[]): number => new Set(uses.flatMap(({ taken }) => taken)).size;

const UNKNOWN_GRADE_DEG = 6;

const enough = (given: number | null, needed: number): boolean => given !== null && given >= needed;

/** How traffic passes where so many lanes are blocked. */
export function closureKind(traits: RoadTraits, lanesBlocked: number): ClosureKind {
  const lanes = laneCount(traits);
  if (lanesBlocked <= 0) return 'shoulder';
  if (lanesBlocked >= lanes) return 'road closed';
  if (traits.oneway !== 'no') return 'lane merged';
  return lanes - lanesBlocked >= 2 && lanesBlocked < lanes / 2 ? 'lane merged' : 'one lane in turn';
}

function taperFor(kind: ClosureKind, mph: number, laneM: number, shoulderM: number): number | null {
  if (kind === 'road closed') return null;
  if (kind === 'one lane in turn') return oneLaneTaperM[1];
  return kind === 'shoulder' ? shoulderTaperM(mph, shoulderM) : mergingTaperM(mph, laneM);
}
