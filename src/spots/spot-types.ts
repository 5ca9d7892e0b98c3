import type { PlanVector } from '../rigging/index.ts';
import type { Footprint } from './footprint.ts';
import type { LaneUse } from './lanes.ts';
import type { SpotProblem } from './spot-problems.ts';

/** What a spot is good for: nothing tied to it, anchor of a haul, change of direction, or either of the two. */
export type SpotUse = 'anchor' | 'turn' | 'either' | 'blocker';

/** A place and heading where an apparatus is parked, worked out. Metres, degrees, kilonewtons; offsets from the line as drawn. */
export interface Spot {
  readonly id: string;
  readonly apparatusId: string;
  readonly footprint: Footprint;
  readonly stationM: number;
  readonly offsetM: number;
  /** Of the road there, up along the drawing; fall to its right. Null where unknown. */
  readonly gradeDeg: number | null;
  readonly crossfallDeg: number | null;
  /** From the outline to the nearest end of the bench where ground falls, measured straight; null where there is none near. */
  readonly edgeClearanceM: number | null;
  readonly lanes: LaneUse;
  /** Fall of the standing ground, metres per metre, pointing down; null where unknown. */
  readonly fall: PlanVector | null;
  /** Whichever way it is pulled. */
  readonly holdKn: number;
  readonly use: SpotUse;
  readonly problems: readonly SpotProblem[];
  /** False where a problem is "unmet": only a spot that somebody pinned is then still listed. */
  readonly workable: boolean;
}
