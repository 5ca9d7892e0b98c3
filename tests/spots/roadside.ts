import { type Apparatus, defaultFleet, defaultRates } from '../../src/book/index.ts';
import { fairConditions } from '../../src/rigging/index.ts';
import type { Bench } from '../../src/road/index.ts';
import {
  candidateSpots,
  defaultSpotSettings,
  type Hazard,
  type Spot,
  type StandingGround,
  standingGround,
} from '../../src/spots/index.ts';
import { paved } from './made-bench.ts';

export const wet = { ...fairConditions, wet: true };
export const [engine, , , lightRig] = defaultFleet as [Apparatus, Apparatus, Apparatus, Apparatus];

/** A roadside in fair weather on a paved two-lane road without marks or site. */
export const roadside = (bench: Bench, more: Partial<StandingGround> = {}): StandingGround =>
  standingGround({
    ...{ bench, traits: paved, hazards: [], conditions: fairConditions, settings: defaultSpotSettings },
    ...{ ground: null, site: null },
    ...more,
  });

export const spotsFor = (ground: StandingGround, fleet: readonly Apparatus[] = [engine]): Spot[] =>
  candidateSpots(ground, fleet, defaultRates);

export const hazard = (kind: Hazard['kind'], shape: Hazard['shape'], ...xy: number[]): Hazard => ({
  ...{ id: kind, kind, shape, xy: Float64Array.from(xy) },
});
