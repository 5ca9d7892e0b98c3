import { geodesicM, type LonLat } from '../../geo/index.ts';
import type { Route } from '../routes.ts';

/** Metres of one degree of latitude, for finding the nearest segment only. */
const DEGREE_M = 111_132;

/** Station of the point of a route nearest to a position, and the distance between them, metres. */
export function stationOnRoute({ line, stationM }: Route, at: LonLat): { stationM: number; awayM: number } {
  const east = DEGREE_M * Math.cos((at.lat * Math.PI) / 180);
  let best = { stationM: stationM[0] ?? 0, lon: line[0] ?? at.lon, lat: line[1] ?? at.lat, squared: Infinity };
  for (let k = 0; k + 1 < stationM.length; k++) {
    const ax = (line[2 * k]! - at.lon) * east;
    const ay = (line[2 * k + 1]! - at.lat) * DEGREE_M;
    const dx = (line[2 * k + 2]! - line[2 * k]!) * east;
    const dy = (line[2 * k + 3]! - line[2 * k + 1]!) * DEGREE_M;
    const length = dx * dx + dy * dy;
    const t = length > 0 ? Math.min(1, Math.max(0, -(ax * dx + ay * dy) / length)) : 0;
    const x = ax + t * dx;
    const y = ay + t * dy;
    const squared = x * x + y * y;
    if (squared >= best.squared) continue;
    best = {
      stationM: stationM[k]! + t * (stationM[k + 1]! - stationM[k]!),
      lon: at.lon + x / east,
      lat: at.lat + y / DEGREE_M,
      squared,
    };
  }
  return { stationM: best.stationM, awayM: geodesicM(at, best) };
}

/** Position of a station on a route, WGS 84; the route's ends beyond them. */
export function positionOnRoute({ line, stationM, lengthM }: Route, station: number): LonLat {
  const s = Math.min(lengthM, Math.max(0, station));
  let k = 0;
  while (k < stationM.length - 2 && stationM[k + 1]! < s) k++;
  const run = stationM[k + 1]! - stationM[k]!;
  const t = run > 0 ? (s - stationM[k]!) / run : 0;
  return {
    lon: line[2 * k]! + t * (line[2 * k + 2]! - line[2 * k]!),
    lat: line[2 * k + 1]! + t * (line[2 * k + 3]! - line[2 * k + 1]!),
  };
}
