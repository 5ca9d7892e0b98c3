import type { SlopeAbove } from './slope-above.ts';

/**
 * One side of a bench, an array element a station. Offsets are metres from the road line AS DRAWN, positive to the right of
 * its drawing, so that those of the left side are as a rule negative; NaN where there is no such thing.
 */
export interface BenchSide {
  /** The end of the bench: the edge where the ground falls, the toe where it rises. */
  readonly edgeOffsetM: Float64Array;
  /** One sigma of the edge offset; ± 1.645 of it are printed as the 90 % band. */
  readonly sigmaM: Float64Array;
  /** Values of `KIND`. */
  readonly kind: Uint8Array;
  /** Where 12 % across the road is passed: the inner end of a soft shoulder, else the edge itself. */
  readonly firmOffsetM: Float64Array;
  /** How far people may stand out; on level ground, how far the ground was seen to be level. */
  readonly usableOffsetM: Float64Array;
  /** Near lip of a ditch, with the edge as its toe beside it. */
  readonly lipOffsetM: Float64Array;
  /** The edge point on the local plane, metres. */
  readonly edgeX: Float64Array;
  readonly edgeY: Float64Array;
  /** Height of the bench at its edge, metres. */
  readonly edgeHeightM: Float64Array;
  /** Slope of the 4 m beyond the edge as a tangent, up positive, and the deepest fall within 20 m, metres (on a rise, behind a low bank). */
  readonly outerSlope: Float64Array;
  readonly fallM: Float64Array;
  /** Height of a low bank that stands between the bench and its edge, metres; NaN where there is none. */
  readonly bankM: Float64Array;
  /** What rises over the road on this side; null where nothing does. */
  readonly above: readonly (SlopeAbove | null)[];
}

export type NoteCode =
  | 'bank'
  | 'bank-at-edge'
  | 'culvert'
  | 'ditch'
  | 'drop-behind-bank'
  | 'line-shift'
  | 'no-ground'
  | 'side-changes'
  | 'slope-above'
  | 'soft-shoulder'
  | 'structure'
  | 'through-fill'
  | 'track-leaves'
  | 'two-benches';

/** Something that a study must say about a stretch of the bench. `side` is −1 left, 1 right, 0 the road as a whole. */
export interface BenchNote {
  readonly code: NoteCode;
  readonly side: -1 | 0 | 1;
  readonly fromM: number;
  readonly toM: number;
  /** The figures that its sentence needs, metres and degrees; what they are is said at each code in `bench-notes.ts`. */
  readonly values: readonly number[];
}

/** The road bench along a stretch of road, one element a whole metre of station. */
export interface Bench {
  readonly firstStationM: number;
  readonly count: number;
  /** 'assumed' where the cells are too coarse to see a bench: edges then stand at half the tagged or default width. */
  readonly how: 'computed' | 'assumed';
  readonly rule: string;
  /** Road line as drawn at each station with its unit normal to the right, local metres. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly normalX: Float64Array;
  readonly normalY: Float64Array;
  readonly left: BenchSide;
  readonly right: BenchSide;
  /** The road found beside its line, metres to the right of it. */
  readonly shiftM: Float64Array;
  /** Height of the road's middle, metres; grade along the drawing, up positive, and fall across, to the right positive, degrees. */
  readonly heightM: Float64Array;
  readonly gradeDeg: Float64Array;
  readonly crossfallDeg: Float64Array;
  /** Values of `UNDER`. */
  readonly under: Uint8Array;
  readonly notes: readonly BenchNote[];
}
