import type { Geometry } from 'geojson';
import type { AdvantageName, Fit, LineName, Reason, Role, Verdict } from '../rigging/index.ts';
import type { SpotUse } from '../spots/index.ts';
import type { Position } from './position.ts';

/** One thing wrong with a spot: "unmet" refuses it, "check" is for somebody on site. */
export interface StudySpotProblem {
  code: string;
  severity: 'unmet' | 'check';
  text: string;
  markId: string | null;
}

/** A place for an apparatus; position and heading are of the middle of its outline and its cab end. */
export interface StudySpot extends Position {
  id: string;
  apparatus: string;
  lengthM: number;
  widthM: number;
  headingDeg: number;
  stationM: number;
  offsetM: number;
  gradeDeg: number | null;
  crossfallDeg: number | null;
  /** From the nearest tyre line; null where no falling edge is near. */
  edgeClearanceM: number | null;
  lanesBlocked: number;
  /** Whichever way it is pulled. */
  holdKn: number;
  use: SpotUse;
  problems: StudySpotProblem[];
  workable: boolean;
  /** Somebody fixed it; it stays listed when it becomes unworkable. */
  pinned: boolean;
}

/** How a line would be short, and whose arrival mends it; null where nobody listed brings such rope. */
export interface StudyShort {
  line: LineName;
  byM: number;
  unit: string | null;
  atMin: number | null;
}

/** A count of people and the minute after the first arrival at which they are there; null where they never come. */
export interface StudyCount {
  count: number;
  atMin: number | null;
}

export interface StudyForce {
  at: string;
  kind: 'hold' | 'strength' | 'turn' | 'belay' | 'grab' | 'part';
  kn: number;
  towardDeg: number | null;
  capacityKn: number | null;
  factor: number | null;
  required: number | null;
  ok: Verdict;
  points: 1 | 2;
  rule: string;
}

/** A complete haul arrangement. Lengths in metres along ropes, plan distances for the haul field, kilonewtons. */
export interface StudyLayout {
  id: string;
  kind: 'straight' | 'turned';
  /** Ids of spots or marks. */
  anchor: string;
  turn: string | null;
  /** Where rope is tied or bends. `handTurn`: where the hauling end of a straight haul turns along the road. */
  points: {
    edge: Position;
    turn: Position | null;
    anchor: Position;
    belayAnchor: Position;
    handTurn: Position | null;
  };
  lines: {
    main: { anchor: string; deviceAt: string; captureAt: string; turn: string | null };
    belay: { anchor: string; deviceAt: string; runM: number; sharesAnchorWith: string | null };
    /** Anchor at which the hauling end turns. */
    hand: { anchor: string } | null;
  };
  contacts: { distanceM: number; bendDeg: number }[];
  haulFieldM: number;
  throwM: number;
  raiseM: number;
  pulls: number;
  resets: number;
  liftedByHandM: number;
  mechanicalAdvantage: AdvantageName;
  system: 'built in' | 'separate haul line';
  tensionKn: { walking: number; hanging: number; held: number; belay: number };
  team: { walking: number; allHang: number; sustained: number; handsAtOnce: number; checkGrab: boolean };
  walkM: number;
  regripsPerPull: number;
  ropeM: { main: number; belay: number; haul: number | null };
  fits: { firstArriving: Fit; firstAlarm: Fit; mutualAid: Fit; short: StudyShort[] };
  /** Where ropes are short: how the slope is taken in stages, or null where no stages are needed or none can be told. */
  stages: { count: number; ropeLengthM: number; at: { distanceM: number; what: string }[] }[] | null;
  lanesBlocked: number;
  /** Between the two legs of the main line, 180 is straight on; null in a straight haul. */
  turnAngleDeg: number | null;
  keepOut: Geometry;
  people: {
    contact: StudyCount | null;
    leastLower: StudyCount;
    leastRaise: StudyCount;
    full: StudyCount;
    roles: { role: Role; count: number }[];
  };
  forces: StudyForce[];
  minutes: {
    from: number | null;
    to: number | null;
    parts: { closure: number; rig: number; lower: number; package: number; raise: number; wait: number | null };
  };
  rank: number;
  /** Sentences, the deciding step of the rank first. */
  why: string[];
  /** Every number with its formula, inputs and source. */
  reasons: Reason[];
}

export type WayKind = 'raise' | 'lower' | 'carry' | 'boat' | 'air';

/** One way to end the job; `ropeM` is the longest single rope that it takes. */
export interface StudyWay {
  kind: WayKind;
  ropeM: number | null;
  people: StudyCount;
  minutes: { from: number | null; to: number | null };
  /** Who meets the litter where. */
  meets: string;
  /** Who carry the litter; null where nobody does. */
  bearers: number | null;
  /** Who can come to where the way ends; people alone must carry on from there, which is not counted. */
  reachedBy: 'vehicle' | 'people';
  /** The ropes that come reach, unjoined, and the people come. */
  allowed: boolean;
  rank: number;
  why: string[];
}
