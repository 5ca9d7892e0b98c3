import type { RoadAround, RoadsAround } from '../../access/index.ts';
import type { AngleRule, Book } from '../../book/index.ts';
import type { LonLat } from '../../geo/index.ts';
import type { CallPack, CallRoad } from '../../io/offline/index.ts';
import type { Conditions } from '../../rigging/index.ts';
import type { UnitSystem } from '../../units/index.ts';
import type { DistrictFiles } from '../district.ts';
import type { SideAsked } from '../side-of-ask.ts';

/** A district as the call view opens it. With a book, sites and marks are the book's, and what it has of people, kit and posts. */
export interface CallSource {
  readonly name: string;
  readonly invented: boolean;
  readonly files: DistrictFiles;
  readonly book: Book | null;
  readonly units: UnitSystem;
  readonly rule: AngleRule;
  /** Ground is there only this far around each site, metres each way; left out where the files are whole. */
  readonly groundHalfM?: number;
}

/** What is there to keep: the pack with its sites in road order, before any of them is worked out. */
export interface CallOutline {
  readonly pack: Omit<CallPack, 'madeAtMs' | 'madeFrom' | 'from'>;
  /** Posts that stand off their road, or roads of posts that the road file does not have: sentences. */
  readonly complaints: readonly string[];
}

export interface CallStudyAsk {
  readonly at: LonLat;
  readonly side: SideAsked;
  /** Id of the site, for its marks and people; null for a place that nobody surveyed. */
  readonly siteId: string | null;
  readonly conditions: Conditions;
}

/** The surveyed site nearest along the road to one of its edges. */
export interface NearestSite {
  readonly siteId: string;
  readonly alongM: number;
  /** True azimuth from the edge to the site, degrees. */
  readonly towardDeg: number;
}

/** A road around a place with the surveyed sites on it, nearest along the road first; sites on the other side left out. */
export interface RoadWithSites extends RoadAround {
  readonly sites: readonly NearestSite[];
  readonly mile: number | null;
}

/** The way along the roads from a device to a place. */
export interface ByRoad {
  readonly alongM: number;
  /** Whether the device moves towards it along that way; null where it stands or does not say. */
  readonly ahead: boolean | null;
  /** How far off the device's position may be, metres. */
  readonly errorM: number;
}

export interface AroundAnswer extends Omit<RoadsAround, 'above' | 'below' | 'beside'> {
  readonly above: readonly RoadWithSites[];
  readonly below: readonly RoadWithSites[];
  readonly beside: readonly RoadWithSites[];
}

export type { CallRoad };
