import type { Conditions } from '../rigging/index.ts';
import type { Bench, RoadTraits } from '../road/index.ts';
import type { Ground } from '../terrain/index.ts';
import type { Hazard } from './hazards.ts';
import { nearSoft } from './near-soft.ts';
import type { SpotSettings } from './spot-settings.ts';
import { type SteepBelow, steepBelow } from './steep-below.ts';

/** Everything about one roadside that does not hang on which apparatus stands there. */
export interface StandingGround {
  readonly bench: Bench;
  readonly traits: RoadTraits;
  readonly hazards: readonly Hazard[];
  readonly conditions: Conditions;
  readonly settings: SpotSettings;
  readonly steep: SteepBelow;
  /** Flags an element: soft ground is marked near that end of the bench. */
  readonly softLeft: Uint8Array;
  readonly softRight: Uint8Array;
  /** The edge point where the rescue starts; its surroundings stay free of vehicles. Null where spots are sought for no site. */
  readonly site: SiteOnBench | null;
}

/** Station of the edge point and its side, −1 left, 1 right of the drawing. */
export interface SiteOnBench {
  readonly stationM: number;
  readonly side: -1 | 1;
}

/** Gathers a roadside. `ground` serves to see the lip; without it the bench's own slope line does. */
export function standingGround(input: {
  readonly bench: Bench;
  readonly traits: RoadTraits;
  readonly hazards: readonly Hazard[];
  readonly conditions: Conditions;
  readonly settings: SpotSettings;
  readonly ground: Ground | null;
  readonly site: SiteOnBench | null;
}): StandingGround {
  const { ground, ...rest } = input;
  const { bench, hazards, settings } = input;
  return {
    ...rest,
    steep: steepBelow(bench, ground, hazards, settings.steepBelowDeg),
    softLeft: nearSoft(bench, bench.left, hazards),
    softRight: nearSoft(bench, bench.right, hazards),
  };
}
