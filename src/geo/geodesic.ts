import geodesic from 'geographiclib-geodesic';
import type { LonLat } from './types.ts';

const wgs84 = geodesic.Geodesic.WGS84;

/** Length in metres of the shortest line between two positions on the WGS 84 ellipsoid (Karney 2013), true to 15 nm. */
export const geodesicM = (a: LonLat, b: LonLat): number =>
  wgs84.Inverse(a.lat, a.lon, b.lat, b.lon, geodesic.Geodesic.DISTANCE).s12!;
