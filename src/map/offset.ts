import type { LonLat } from '../geo/index.ts';
import { toRadians } from '../units/index.ts';

/** Length of a degree of latitude on the map's sphere, metres. */
const METRES_PER_DEGREE = 111_320;

/** A position moved by metres east and north, degrees; good to a hand's breadth over 10 m. For the eye and for nudging. */
export function offsetBy({ lon, lat }: LonLat, eastM: number, northM: number): LonLat {
  const perLon = METRES_PER_DEGREE * Math.cos(toRadians(lat));
  return { lon: lon + eastM / perLon, lat: lat + northM / METRES_PER_DEGREE };
}
