import type { AngleClass } from '../book/index.ts';
import type { EdgeKind } from '../road/index.ts';
import type { TerrainKind } from '../terrain/index.ts';

/** WGS 84 degrees, printed to 1e-8. */
export interface Position {
  lon: number;
  lat: number;
}

export interface StudySite extends Position {
  side: 'left' | 'right';
  sideAzimuthDeg: number;
  sideWords: string;
  road: { id: string; name: string | null; stationM: number };
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
  sources: StudyTerrainSource[];
}

export interface StudyBenchStation {
  stationM: number;
  leftEdgeKind: EdgeKind;
  rightEdgeKind: EdgeKind;
  leftEdgeOffsetM: number | null;
  rightEdgeOffsetM: number | null;
  usableLeftOffsetM: number | null;
  usableRightOffsetM: number | null;
  lineShiftM: number;
}

export interface StudyBench extends Omit<StudyBenchStation, 'stationM'> {
  widthM: number | null;
  gradeDeg: number;
  crossfallDeg: number;
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
  steps: { distanceM: number; heightM: number; source: 'ground' | 'mark' | 'map' }[];
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
}

/**
 * One site's whole workup and the contract of the program: the command line prints exactly this as JSON, and every screen
 * and sheet reads it. Lengths in metres, angles in degrees, azimuths true. Offsets are from the road line as drawn,
 * positive to the right of its drawing; `distanceM` starts at the edge and is horizontal.
 */
export interface Study {
  schema: 'brinkbook/study@1';
  site: StudySite;
  terrain: StudyTerrain;
  check: { by: string; role: string; on: string; method: 'walked' | 'drove' | 'desk'; conditions: string } | null;
  bench: StudyBench | null;
  above: { angleDeg: number; heightM: number } | null;
  edge: StudyEdge | null;
  descent: StudyDescent | null;
  profile: StudyProfile | null;
  angle: StudyAngle | null;
  spots: never[];
  layouts: never[];
  ways: never[];
  closure: null;
  arriving: never[];
  call: never[];
  origins: Record<string, Origin>;
  warnings: StudyWarning[];
  sentence: string;
}
