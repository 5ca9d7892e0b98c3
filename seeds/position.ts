import proj4 from 'proj4';
import { area } from './recipe.ts';

/** EPSG code of the demo's rasters: UTM zone 9 north on WGS 84. */
export const EPSG = 32609;

const utm = proj4('+proj=longlat +datum=WGS84 +no_defs', '+proj=utm +zone=9 +datum=WGS84 +units=m +no_defs');

/** Grid metres to WGS 84 degrees, rounded to 1e-8. */
export function lonLat(x: number, y: number): [lon: number, lat: number] {
  const [lon, lat] = utm.inverse([x, y]);
  return [Math.round(lon * 1e8) / 1e8, Math.round(lat * 1e8) / 1e8];
}

/** Grid metres per metre on the ground in the middle of the area; over the area it changes by 1 in 100,000. */
export const gridScale = scaleAt((area.west + area.east) / 2, (area.south + area.north) / 2);

/** True azimuth of grid north there, degrees: what is added to a grid azimuth. */
export const convergenceDeg = convergenceAt((area.west + area.east) / 2, (area.south + area.north) / 2);

/** Point scale of UTM (Snyder 1987, Professional Paper 1395, eq. 8-12, first two terms). */
function scaleAt(x: number, y: number): number {
  const [, lat] = utm.inverse([x, y]);
  const phi = (lat * Math.PI) / 180;
  const e2 = 0.00669437999014;
  const nu = 6378137 / Math.sqrt(1 - e2 * Math.sin(phi) ** 2);
  const rho = (6378137 * (1 - e2)) / (1 - e2 * Math.sin(phi) ** 2) ** 1.5;
  const east = (x - 500000) / 0.9996;
  return 0.9996 * (1 + (east * east) / (2 * nu * rho));
}

function convergenceAt(x: number, y: number): number {
  const [lon, lat] = utm.inverse([x, y]);
  const [lon2, lat2] = utm.inverse([x, y + 100]);
  return (Math.atan2((lon2 - lon) * Math.cos((lat * Math.PI) / 180), lat2 - lat) * 180) / Math.PI;
}
