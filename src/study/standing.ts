import type { Apparatus } from '../book/index.ts';
import type { Conditions } from '../rigging/index.ts';
import type { Bench, RoadTraits } from '../road/index.ts';
import {
  defaultSpotSettings,
  type Hazard,
  hazardsOf,
  layoutSpots,
  placeOnBench,
  type Spot,
  type StandingGround,
  type Stations,
  standingGround,
} from '../spots/index.ts';
import type { Ground } from '../terrain/index.ts';
import type { GroundInputs, Resources, StudyInputs } from './inputs.ts';
import { featuresNear } from './near.ts';
import type { SideWork } from './side.ts';

/** Where the apparatus that come can stand, and under what conditions that was sought. */
export interface Standing {
  readonly conditions: Conditions;
  readonly resources: Resources;
  /** Apparatus in play: those that arrive. */
  readonly fleet: readonly Apparatus[];
  readonly ground: StandingGround;
  readonly spots: readonly Spot[];
}

/** What of a ground work the places to stand hang on; the side has a descent. */
export interface WorkedGround {
  readonly inputs: GroundInputs;
  readonly ground: Ground;
  readonly bench: Bench;
  readonly computedBench: Bench;
  readonly i: number;
  readonly side: SideWork;
  readonly traits: RoadTraits;
}

/** Marks and mapped things farther from the site than this have no part in it, metres. */
const HAZARD_REACH_M = 250;

/**
 * Seeks places for the apparatus that come, around the point of the edge where the descent of a ground work starts; a draft at some
 * `stations` alone.
 */
export function standingAt(
  { inputs, ground, bench, computedBench, i, side, traits }: WorkedGround,
  { conditions, resources }: Pick<StudyInputs, 'conditions' | 'resources'>,
  stations?: Stations,
): Standing {
  const features = featuresNear(inputs.roads.network.features, ground.plane.origin, HAZARD_REACH_M);
  const hazards: Hazard[] = hazardsOf(inputs.marks, features, ground.plane);
  const { start } = side.descent!.line;
  const at = new Float64Array(2);
  const element = placeOnBench(bench, start.x, start.y, i, at) ? at[0] : i;
  const coming = new Set(resources.arrivals.map(({ apparatusId }) => apparatusId));
  const fleet = resources.fleet.filter(({ id }) => coming.has(id));
  const here = {
    ...{ bench, traits, hazards, conditions, ground, settings: defaultSpotSettings },
    site: { stationM: bench.firstStationM + element, side: side.side === 'left' ? -1 : 1 },
  } as const;
  const standing = standOnMeasured(standingGround(here), computedBench === bench ? null : computedBench, here);
  const spots = layoutSpots(standing, fleet, resources.rates, stations);
  return { conditions, resources, fleet, ground: standing, spots };
}

/** Where a reading moved the edge, a lip that is steep below the computed edge stays steep. */
function standOnMeasured(
  standing: StandingGround,
  computedBench: Bench | null,
  here: Parameters<typeof standingGround>[0],
): StandingGround {
  if (!computedBench) return standing;
  const { steep } = standingGround({ ...here, bench: computedBench });
  const either = (a: Uint8Array, b: Uint8Array): Uint8Array => a.map((flag, k) => flag | b[k]);
  return {
    ...standing,
    steep: { left: either(standing.steep.left, steep.left), right: either(standing.steep.right, steep.right) },
  };
}

const conditionNames = ['wet', 'ice', 'night', 'wind', 'looseGround'] as const;

/** True where places were sought under these conditions, for this fleet, these arrivals and rates. */
export function standsFor(
  standing: Standing,
  { conditions, resources }: Pick<StudyInputs, 'conditions' | 'resources'>,
): boolean {
  const { fleet, arrivals, rates } = standing.resources;
  return (
    conditionNames.every((name) => standing.conditions[name] === conditions[name]) &&
    fleet === resources.fleet &&
    arrivals === resources.arrivals &&
    rates === resources.rates
  );
}
