import type { VerticalUnit } from '../../units/index.ts';

/** What a vertical coordinate reference system says of the heights under it. */
export interface VerticalCrs {
  /** Unit of the heights, or null where the file names a datum without a unit. */
  readonly unit: VerticalUnit | null;
  /** Name of the datum as the EPSG data set or the file writes it, 'NAVD88 height'; null where it has none. */
  readonly datum: string | null;
}

/** A coordinate reference system: how its coordinates and WGS 84 longitude and latitude turn into each other. */
export interface Crs {
  /** A text that a person can look up: 'EPSG:32609', 'EPSG:26918+5703', or the file's own name for it. */
  readonly text: string;
  /** Metres in one unit of its coordinates; null where they are degrees. */
  readonly unitM: number | null;
  /**
   * How far the shift of its datum to WGS 84 may be off, metres, as the EPSG data set states it; null where nobody does.
   * Epochs and plate motion are left out: NAD 83 is taken for WGS 84, which is 1 to 2 m off in North America.
   */
  readonly shiftAccuracyM: number | null;
  /** The heights' system, or null where none is named. */
  readonly vertical: VerticalCrs | null;
  /** WGS 84 degrees to its coordinates: east, north in its unit (or longitude, latitude in degrees). NaN outside its domain. */
  fromLonLat(lon: number, lat: number): [x: number, y: number];
  /** Its coordinates to WGS 84 degrees, longitude first. */
  toLonLat(x: number, y: number): [lon: number, lat: number];
}
