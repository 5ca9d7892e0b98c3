/** What a parked apparatus must keep, metres, degrees, kilograms (common practice, no source; settings of the book). */
export interface SpotSettings {
  /** Outer wheels from an edge on the carriageway; on gravel when wet. */
  readonly carriagewayM: number;
  readonly gravelWetM: number;
  /** Where the bench is too narrow for that, mid-road, never under this … */
  readonly narrowLeastM: number;
  /** … with this much room to steer into the middle. */
  readonly steerM: number;
  /** From an edge off the carriageway, or over a steep lip or a wall: heavy and lighter apparatus. */
  readonly heavyM: number;
  readonly lightM: number;
  /** Heavy is over this, as it drives. */
  readonly heavyOverKg: number;
  /** By what those two grow where the ground is soft or wet. */
  readonly softOrWetFactor: number;
  /** A lip over this in its first 2 m is steep. */
  readonly steepBelowDeg: number;
  /** From the toe of a cut or the lip of a ditch. */
  readonly toeM: number;
  readonly gradeMostDeg: number;
  readonly crossfallMostDeg: number;
  /** Either is "check" from here. */
  readonly slopeCheckDeg: number;
  /** How far across the road an apparatus may point, unless it stands nose-in. */
  readonly acrossMostDeg: number;
  /** How far along the road from the site spots are sought. */
  readonly reachM: number;
  /** Along the road and into it, free of vehicles at the edge of the site. */
  readonly freeAtEdgeM: number;
  /** Apparatus without a part in the haul stays this far to the side of the descent. */
  readonly blockerAsideM: number;
  /** No anchor nearer to the edge leaves a throw: 1.0 m and 1.5 m of clearance and 1 m of throw. */
  readonly leastFieldM: number;
  /** Spare width that driving past takes, both sides together. */
  readonly passingM: number;
}

export const defaultSpotSettings: SpotSettings = {
  carriagewayM: 1.5,
  gravelWetM: 2.5,
  narrowLeastM: 1,
  steerM: 0.25,
  heavyM: 2.5,
  lightM: 1.5,
  heavyOverKg: 10_000,
  softOrWetFactor: 2,
  steepBelowDeg: 45,
  toeM: 0.5,
  gradeMostDeg: 6,
  crossfallMostDeg: 5,
  slopeCheckDeg: 3,
  acrossMostDeg: 30,
  reachM: 60,
  freeAtEdgeM: 4,
  blockerAsideM: 10,
  leastFieldM: 3.5,
  passingM: 1,
};
