/** What lies on the way down, in local metres. Rings and lines are x, y pairs, stride 2. */
export interface Surroundings {
  /** Roads, trails and streams: a centre line and half its width. */
  readonly bands: readonly Band[];
  /** Bench outlines of the own road and areas of water; a ring need not repeat its first point. */
  readonly areas: readonly Area[];
  /** Marked or mapped walls, cliffs and steps. */
  readonly drops: readonly MarkedDrop[];
}

export type CrossingKind = 'bench' | 'road' | 'trail' | 'water';

export interface Band {
  readonly kind: 'road' | 'trail' | 'water';
  readonly line: Float64Array;
  readonly halfWidthM: number;
}

export interface Area {
  readonly kind: 'road' | 'water';
  readonly ring: Float64Array;
}

export interface MarkedDrop {
  readonly source: 'mark' | 'map';
  /** A line, or a single point for a mark that was set as one. */
  readonly line: Float64Array;
  /** Height where somebody stated it, metres. */
  readonly heightM: number | null;
}

export const noSurroundings: Surroundings = { bands: [], areas: [], drops: [] };
