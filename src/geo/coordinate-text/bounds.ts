import type { LonLat } from '../types.ts';
import type { DistrictBounds } from './reading.ts';

/** True inside a box of degrees or on its rim; a box whose west is over its east crosses the 180th meridian. */
export const isInsideBounds = ({ lon, lat }: LonLat, { west, south, east, north }: DistrictBounds): boolean =>
  lat >= south && lat <= north && (west <= east ? lon >= west && lon <= east : lon >= west || lon <= east);

/** The point of a box nearest to a position, in degrees; good enough to say about how far away a place is. */
export function nearestInside({ lon, lat }: LonLat, { west, south, east, north }: DistrictBounds): LonLat {
  const turned = [lon, lon - 360, lon + 360];
  const span = west <= east ? east : east + 360;
  const onBox = turned.map((x) => Math.min(Math.max(x, west), span));
  const best = turned.reduce((b, x, i) => (Math.abs(x - onBox[i]!) < Math.abs(turned[b]! - onBox[b]!) ? i : b), 0);
  return { lon: onBox[best]!, lat: Math.min(Math.max(lat, south), north) };
}

/** The middle of a box. */
export function middleOf({ west, south, east, north }: DistrictBounds): LonLat {
  const lon = (west + (west <= east ? east : east + 360)) / 2;
  return { lon: lon > 180 ? lon - 360 : lon, lat: (south + north) / 2 };
}

/** About how far two positions lie apart, metres: true to 1 % within 100 km, enough to tell places apart and to say "km away". */
export function roughM(a: LonLat, b: LonLat): number {
  const turns = Math.abs(a.lon - b.lon) % 360;
  const east = Math.min(turns, 360 - turns) * Math.cos(((a.lat + b.lat) * Math.PI) / 360);
  return METRES_PER_DEGREE * Math.hypot(east, a.lat - b.lat);
}

/** Along a meridian and along the equator, rounded up. */
export const METRES_PER_DEGREE = 111_320;
