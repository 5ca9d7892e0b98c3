import {
  type AngleRule,
  type Apparatus,
  defaultArrivals,
  defaultFleet,
  defaultKits,
  defaultRates,
  defaultResponse,
  type EventRecord,
  type Kit,
  type Mark,
  type Rates,
  type ResponseRow,
  type UnitArrival,
} from '../book/index.ts';
import type { LonLat } from '../geo/index.ts';
import { type Conditions, fairConditions } from '../rigging/index.ts';
import type { RoadIndex } from '../road/index.ts';
import type { Ground } from '../terrain/index.ts';
import type { UnitSystem } from '../units/index.ts';
import type { FieldInputs } from './field/field-inputs.ts';
import type { Side } from './side.ts';

/** What the ground of a site is worked out from. */
export interface GroundInputs {
  /** Ground around the site on a plane centred there; what it lacks, the files lack. */
  readonly ground: Ground;
  readonly roads: RoadIndex;
  readonly marks: readonly Mark[];
  /** A point beside a road. */
  readonly at: LonLat;
  /** Side of the road line as drawn, or null for the side that drops. */
  readonly side: Side | null;
  readonly patient: LonLat | null;
  readonly rule: AngleRule;
  /** What changed the ground where and when: heights older than that are for screening only. */
  readonly events?: readonly EventRecord[];
  /** What a crew read at the site and who signed: see `fieldOfBook`. */
  readonly field?: FieldInputs | null;
}

/** Who comes with what, and how the district works. `how` tells a district's own from what is shipped. */
export interface Resources {
  readonly how: 'shipped' | 'book';
  readonly fleet: readonly Apparatus[];
  readonly kits: readonly Kit[];
  readonly arrivals: readonly UnitArrival[];
  readonly response: readonly ResponseRow[];
  readonly rates: Rates;
  /** The book has the belay take the full weight everywhere. */
  readonly fullBelay?: boolean;
}

/** Ids of spots or marks that somebody fixed; the rest of a layout is worked out around them. */
export interface Pins {
  readonly anchor?: string;
  readonly turn?: string;
  readonly belay?: string;
}

/** What a study is made from; the same inputs always give the same study. */
export interface StudyInputs extends GroundInputs {
  readonly resources: Resources;
  readonly conditions: Conditions;
  /** More than one are raised one after another. */
  readonly patients: number;
  readonly pins: Pins;
  readonly units: UnitSystem;
}

/** The shipped fleet, kits, arrivals, response table and rates. */
export const shippedResources: Resources = {
  how: 'shipped',
  fleet: defaultFleet,
  kits: defaultKits,
  arrivals: defaultArrivals,
  response: defaultResponse,
  rates: defaultRates,
};

/** What is taken where nobody says otherwise: the shipped resources, fair weather, one patient, nothing pinned. */
export const defaultCircumstances: Pick<StudyInputs, 'resources' | 'conditions' | 'patients' | 'pins'> = {
  resources: shippedResources,
  conditions: fairConditions,
  patients: 1,
  pins: {},
};
