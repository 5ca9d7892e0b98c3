import type { Feature, RoadKey } from '../recipe.ts';
import type { Line } from './line.ts';
import type { SlopeKind } from './shapes.ts';

/** One side of a road, a value a station; side 0 is left of the direction of drawing, side 1 right. */
export interface SideDesign {
  /** Middle line to the edge of the bench, metres. */
  readonly half: Float32Array;
  /** Falls of the fill and of the carved floor, FALL_COUNT values a station. */
  readonly fill: Float32Array;
  readonly carve: Float32Array;
  /** Kind of the slope laid down. */
  readonly kind: SlopeKind[];
  /** Added to the fall where the land is carved away down to it; Infinity where it is not. */
  readonly carveLift: Float32Array;
  /** Slope of the cut above, tangent, and depth of its ditch, metres. */
  readonly cut: Float32Array;
  readonly ditch: Float32Array;
  /** Rms of the unevenness of what is laid down, metres. */
  readonly rough: Float32Array;
  /** Height of the berm just inside the edge, metres. */
  readonly berm: Float32Array;
  /** Level ground beside the road before the cut rises, metres. */
  readonly apron: Float32Array;
}

export interface RoadDesign {
  readonly key: RoadKey;
  readonly name: string;
  readonly line: Line;
  readonly second: boolean;
  /** Unit vector along the road, x and y, a value a station. */
  readonly tx: Float64Array;
  readonly ty: Float64Array;
  /** Fall of the bench to the right, tangent. */
  readonly crossfall: Float32Array;
  readonly sides: readonly [SideDesign, SideDesign];
  /** 1 where there is no ground under the road (a bridge). */
  readonly gap: Uint8Array;
  /** 1 where the station lies on the creek's left, −1 on its right, 0 further than 120 m from it. */
  readonly creekSide: Int8Array;
}

/** Edge height at a station, metres: the middle's, plus what the crossfall gives. */
export const edgeZ = (road: RoadDesign, side: 0 | 1, i: number): number =>
  road.line.z[i] + (side === 0 ? 1 : -1) * road.crossfall[i] * road.sides[side].half[i];

/** True where a feature lies on a side. */
export const touches = (feature: Feature, side: 0 | 1) =>
  feature.side === 'both' || (feature.side === 'left') === (side === 0);
