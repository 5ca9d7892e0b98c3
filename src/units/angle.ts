const DEGREES_PER_RADIAN = 180 / Math.PI;

/** Radians to degrees. */
export const toDegrees = (radians: number): number => radians * DEGREES_PER_RADIAN;
/** Degrees to radians. */
export const toRadians = (degrees: number): number => degrees / DEGREES_PER_RADIAN;

/** Azimuth in degrees brought into [0, 360). */
export function normaliseAzimuth(degrees: number): number {
  const a = degrees % 360;
  return a < 0 ? a + 360 : a;
}

/** Smallest unsigned angle between two azimuths, degrees, 0 to 180. */
export function azimuthGap(a: number, b: number): number {
  const gap = Math.abs(normaliseAzimuth(a) - normaliseAzimuth(b));
  return gap > 180 ? 360 - gap : gap;
}

/** True azimuth in degrees (0 north, 90 east) of a vector on a metric plane, x east and y north. */
export const azimuthOf = (x: number, y: number): number => normaliseAzimuth(toDegrees(Math.atan2(x, y)));
