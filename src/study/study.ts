import type { Geometry } from 'geojson';
import type { AngleClass, MarkKind, QuantityName, ResponseTier } from '../book/index.ts';
import type { EdgeKind } from '../road/index.ts';
import type { ClosureKind } from '../spots/index.ts';
import type { TerrainKind } from '../terrain/index.ts';
import type { Position } from './position.ts';
import type { StudyLayout, StudySpot, StudyWay } from './study-haul.ts';

export type * from './position.ts';
export type * from './study-haul.ts';

export interface StudySite extends Position {
  side: 'left' | 'right';
  sideAzimuthDeg: number;
  sideWords: string;
  road: { id: string; name: string | null; stationM: number };
}

/** Under what a study was made, beside its ground. */
export interface StudyGiven {
  conditions: { wet: boolean; ice: boolean; night: boolean; wind: boolean };
  patients: number;
  /** A district's own fleet, kit, arrivals and rates, or the shipped ones. */
  resources: 'shipped' | 'book';
}

export interface StudyTerrainSource {
  source: string;
  crs: string;
  cellM: number;
  verticalRmseM: number | null;
}

export interface StudyTerrain extends StudyTerrainSource {
  kind: TerrainKind;
  collectedOn: string | null;
  screeningOnly: boolean;
  /** The event that these heights are older than, or may be. */
  outdatedBy: { name: string; on: string } | null;
  sources: StudyTerrainSource[];
}

/** Its position is that of the road line as drawn, `azimuthDeg` the true direction of drawing there. */
export interface StudyBenchStation extends Position {
  stationM: number;
  azimuthDeg: number;
  leftEdgeKind: EdgeKind;
  rightEdgeKind: EdgeKind;
  leftEdgeOffsetM: number | null;
  rightEdgeOffsetM: number | null;
  usableLeftOffsetM: number | null;
  usableRightOffsetM: number | null;
  lineShiftM: number;
}

export interface StudyBench extends Omit<StudyBenchStation, 'stationM' | 'lon' | 'lat' | 'azimuthDeg'> {
  widthM: number | null;
  gradeDeg: number;
  crossfallDeg: number;
  /** The travelled way, centred on the middle of the road (`lineShiftM` from the line as drawn). */
  carriageway: { widthM: number; lanes: number; how: 'typed' | 'assumed' };
  stations: StudyBenchStation[];
}

export interface StudyEdge extends Position {
  elevationM: number;
  offsetM: number;
  offsetSigmaM: number;
  firmOffsetM: number;
  lipAngleDeg: number;
}

export type DescentEndReason =
  | 'patient point'
  | 'ground levels'
  | 'water'
  | 'road'
  | 'limit'
  | 'fall line bends'
  | 'no data';

export interface StudyDescent {
  azimuthDeg: number;
  horizontalM: number;
  dropM: number;
  groundLengthM: number;
  ropeLineM: number;
  end: Position & { elevationM: number; why: DescentEndReason };
  crossings: (Position & { kind: 'bench' | 'road' | 'trail' | 'water'; distanceM: number; widthM: number })[];
  steps: { distanceM: number; heightM: number; source: 'ground' | 'mark' | 'map' | 'measured' }[];
  contacts: { distanceM: number; bendDeg: number }[];
  sightLostAtM: number | null;
  /** The taut rope as drawn: corners from the ground at the edge to 0.8 m above it at the end. */
  ropeCorners: { distanceM: number[]; elevationM: number[] };
  /** Where the fall line leaves its chord: the same figures for the whole of it. */
  whole: { horizontalM: number; dropM: number; ropeLineM: number; governingDeg: number; planAs: AngleClass } | null;
}

export interface StudyAngle {
  governingDeg: number;
  governingSigmaDeg: number;
  rangeDeg: [number, number];
  nearbyMaxDeg: number;
  /** The steepest window along the descent, metres from the edge. */
  stretchM: [number, number];
  meanDeg: number;
  windowM: number;
  class: AngleClass | 'undecided';
  planAs: AngleClass;
  probability: { low: number; steep: number; high: number };
  rule: { name: string; lowMaxDeg: number; highMinDeg: number };
  ropePullOfWeight: number;
  groundPressOfWeight: number;
}

/** Ground along the descent; `behind` runs back from the edge across the bench, distances negative, nearest first. */
export interface StudyProfile {
  distanceM: number[];
  elevationM: number[];
  angleDeg: number[];
  behind: { distanceM: number[]; elevationM: number[] };
}

/** Heights around the edge for contours, row after row; each row runs along the descent, the rows go to its right hand. */
export interface StudyRelief {
  /** The first point: metres along the descent (negative: behind the edge) and to its right hand, from the edge (the site where there is none). */
  fromM: [number, number];
  stepM: number;
  /** Points of a row. */
  columns: number;
  baseM: number;
  /** Centimetres above `baseM`; null where there is no ground. */
  overBaseCm: (number | null)[];
}

/** A mark of the book or a mapped feature near the site, WGS 84. */
export interface StudyMark {
  id: string;
  kind: MarkKind;
  name: string | null;
  geometry: Geometry;
}

/** Lanes that the first layout blocks, and a formal closure by the published formulas; sight against stopping distance. */
export interface StudyClosure {
  kind: ClosureKind;
  lanesBlocked: number;
  taperM: number | null;
  advanceSignsM: number[];
  stoppingSightM: number;
  sightM: { before: number | null; after: number | null };
  /** Approaches from which drivers see less than they need to stop. */
  short: ('before' | 'after')[];
  /** Posted, or assumed where nothing is tagged. */
  speed: { mph: number; how: 'typed' | 'assumed' };
}

export interface StudyArrival {
  atMin: number;
  people: number;
  kit: string[];
  unit: string;
  /** What it comes with to stand on, as spots name it; null where nothing. */
  apparatus: string | null;
  tier: ResponseTier;
  /** Ropes that count, metres. */
  ropesM: number[];
}

export interface StudyCall {
  who: string;
  why: string;
  agency: string | null;
  phone: string | null;
  radio: string | null;
}

export type Severity = 'stop' | 'check' | 'note';

export interface StudyWarning {
  code: string;
  text: string;
  severity: Severity;
}

/** How a number came to be: computed, measured in the field, typed in, or assumed; its uncertainty and its rule. */
export interface Origin {
  how: 'computed' | 'measured' | 'typed' | 'assumed';
  sigma: number | null;
  rule: string | null;
  /** Where it was measured: the reading behind it and the value that it took the place of. */
  reading?: StudyReading;
}

/** The last sign-off. `dueOn`: the day by which somebody should be there again, null where nobody was; `due`: that day has come. */
export interface StudyCheck {
  by: string;
  role: string;
  on: string;
  method: 'walked' | 'drove' | 'desk';
  conditions: string;
  dueOn: string | null;
  due: boolean;
}

/** Readings of one quantity at the site, in the unit that its name ends with. */
export interface StudyReading {
  quantity: QuantityName;
  /** Before anybody measured: null where nothing was found or nothing is computed. */
  computed: number | null;
  computedRange: [number, number] | null;
  /** The stretch that governs as computed, metres from the edge. */
  stretchM: [number, number] | null;
  /** The worst reading. */
  measured: number;
  /** One sigma of it: as stated, else what is usual with the tool. */
  sigma: number;
  /** What the study goes by. */
  used: 'measured' | 'computed';
  /** Taken over although gentler: by two readings, a name and a reason. */
  betters: boolean;
  tool: string;
  by: string;
  on: string;
  readings: number;
  reason: string | null;
  /** The two lie farther apart than their uncertainties explain. */
  beyond: boolean;
  /** Why the reading is not taken over; null where it is. */
  why: string | null;
  /** From the place studied to where the worst reading was taken, metres; null where nobody noted that. */
  awayM: number | null;
  /** It was taken elsewhere, or nobody noted where: it betters nothing. */
  elsewhere: boolean;
}

/**
 * One site's whole workup and the contract of the program: the command line prints exactly this as JSON, and every screen
 * and sheet reads it. Lengths in metres, angles in degrees, azimuths true. Offsets are from the road line as drawn,
 * positive to the right of its drawing; `distanceM` starts at the edge and is horizontal.
 */
export interface Study {
  schema: 'brinkbook/study@1';
  site: StudySite;
  given: StudyGiven;
  terrain: StudyTerrain;
  check: StudyCheck | null;
  /** What was read on site beside what was computed, taken over or not. */
  field: StudyReading[];
  bench: StudyBench | null;
  above: { angleDeg: number; heightM: number } | null;
  edge: StudyEdge | null;
  descent: StudyDescent | null;
  profile: StudyProfile | null;
  /** Left out or null where no ground is there or the road is on a structure; studies kept before it was added have none. */
  relief?: StudyRelief | null;
  angle: StudyAngle | null;
  spots: StudySpot[];
  /** By rank. Kept whole also where `angle.planAs` is high: text, screens and sheets then hide minutes and team size. */
  layouts: StudyLayout[];
  /** By rank. */
  ways: StudyWay[];
  closure: StudyClosure | null;
  arriving: StudyArrival[];
  call: StudyCall[];
  /** What was marked or mapped around the site. */
  marks: StudyMark[];
  origins: Record<string, Origin>;
  warnings: StudyWarning[];
  sentence: string;
}
