import type { LocalPlane } from '../geo/index.ts';
import type { VerticalUnit } from '../units/index.ts';
import type { Grid } from './grid.ts';

export type TerrainKind = 'bare earth' | 'surface' | 'unknown';

/** What a surface says of itself. Heights handed to the program are already metres; `verticalUnit` is the file's own. */
export interface SurfaceInfo {
  /** File name or address as the user gave it. */
  readonly source: string;
  readonly kind: TerrainKind;
  /** Horizontal CRS as a text a person can look up: 'EPSG:32609', or the file's own name for it. */
  readonly crs: string;
  /** Larger side of a cell, metres on the ground at the middle of the window. */
  readonly cellM: number;
  readonly verticalUnit: VerticalUnit;
  /** True where the file does not state its vertical unit and metres were taken: the study warns. */
  readonly verticalUnitAssumed: boolean;
  readonly verticalDatum: string | null;
  /** Vertical accuracy as one sigma, metres, or null where nobody states it. */
  readonly verticalRmseM: number | null;
  /** How far the shift of its horizontal datum to WGS 84 may be off, metres; null or missing where nobody states it. */
  readonly shiftAccuracyM?: number | null;
  /** ISO date of collection, if known. */
  readonly collectedOn: string | null;
  /** What changed this ground after its collection, or may have; null or missing where nothing did. */
  readonly outdatedBy?: { readonly name: string; readonly on: string } | null;
}

/**
 * One raster window, placed on a local metric plane. `fit` holds twelve numbers that turn plane metres into fractional
 * cell-centre indices, true to 1 cm over the window; see `place.ts` for their order.
 */
export interface GroundLayer {
  readonly info: SurfaceInfo;
  readonly grid: Grid;
  readonly fit: Float64Array;
}

/**
 * The ground around a site: raster windows on one plane, finest first. The finest layer that has data at a point wins;
 * missing ground is NaN and is never filled in.
 */
export interface Ground {
  readonly plane: LocalPlane;
  readonly layers: readonly GroundLayer[];
}

/** Cells over this size cannot show a road bench: such ground is for screening only (metres; design choice, no source). */
export const SCREENING_CELL_M = 3;

/** True where a surface may only screen: coarse cells, a surface model with trees and roofs in it, or ground that changed since. */
export const isScreeningOnly = (info: SurfaceInfo): boolean =>
  info.cellM > SCREENING_CELL_M || info.kind === 'surface' || Boolean(info.outdatedBy);
