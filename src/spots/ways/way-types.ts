import type { Conditions, KitArrival, Minutes } from '../../rigging/index.ts';
import type { UnitSystem } from '../../units/index.ts';
import type { WaySettings } from './way-settings.ts';

/** So many people, and the minute at which they are there; null where they never come. */
export interface WayPeople {
  readonly count: number;
  readonly atMin: number | null;
}

/** One way to end the job. */
export interface Way {
  readonly kind: 'raise' | 'lower' | 'carry';
  /** The longest single rope that it takes, metres. */
  readonly ropeM: number;
  readonly people: WayPeople;
  /** From first arrival until the litter is met, freeing the patient not counted; null where crew or rope never come. */
  readonly minutes: number | null;
  readonly shown: { readonly from: number; readonly to: number } | null;
  /** Who meets the litter where. */
  readonly meets: string;
  /** Who carry it; null where nobody does. */
  readonly bearers: number | null;
  /** A vehicle comes to where the way ends; else the litter must be carried on, which is not counted. */
  readonly endsAtVehicle: boolean;
  /** The ropes that come reach, unjoined, and the people come. */
  readonly allowed: boolean;
  readonly why: readonly string[];
}

/** The raise of the best layout. */
export interface RaiseOption {
  readonly ropeM: number;
  readonly ropeReaches: boolean;
  readonly people: WayPeople;
  readonly minutes: Pick<Minutes, 'total' | 'shown'>;
}

/** A road or trail that the descent meets at or below the patient. */
export interface LowerTo {
  readonly what: 'road' | 'trail';
  readonly name: string | null;
  /** Along the ground and along the taut rope from the edge, metres. */
  readonly groundM: number;
  readonly ropeLineM: number;
  /** Where the patient lies below it nothing is lowered to it; the way then serves for one above it alone. */
  readonly goesOn: boolean;
}

/** The slope as a carry sees it: degrees, metres along the ground and along the taut rope. */
export interface WaySlope {
  readonly planLow: boolean;
  readonly step: boolean;
  readonly lipChangeDeg: number;
  readonly angleHighDeg: number;
  readonly groundM: number;
  readonly ropeLineM: number;
}

/** What the ways of a site are worked out from. Nothing is lowered or carried without an anchor. */
export interface WayQuestion {
  readonly raise: RaiseOption | null;
  /** From the edge to the anchor that holds main and belay while lowering, metres; null where none is known to hold. */
  readonly lowerRunM: number | null;
  /** From the edge to the anchor that holds the belay line of a carry, metres; null where none is known to hold. */
  readonly carryRunM: number | null;
  readonly slope: WaySlope;
  readonly crossings: readonly LowerTo[];
  readonly arrivals: readonly { readonly atMin: number; readonly people: number }[];
  readonly kits: readonly KitArrival[];
  readonly conditions: Conditions;
  readonly patients: number;
  /** Traffic passes in turns on one lane: two people hold it. */
  readonly alternatingLane: boolean;
  readonly units: UnitSystem;
  readonly rates: WaySettings;
}
