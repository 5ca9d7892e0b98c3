import type { LonLat } from '../geo/index.ts';
import type { MapFeature } from '../road/index.ts';

/** A degree of latitude is never shorter than this on WGS 84, metres. */
const DEGREE_M = 110_500;

/** True where the box of a line of lon, lat pairs comes within `reachM` metres of a position, by a box a little too large. */
export function lineNear(lonLat: ArrayLike<number>, at: LonLat, reachM: number): boolean {
  const lat = reachM / DEGREE_M;
  const lon = lat / Math.max(0.01, Math.cos((Math.min(89, Math.abs(at.lat) + lat) * Math.PI) / 180));
  let west = Number.POSITIVE_INFINITY;
  let east = Number.NEGATIVE_INFINITY;
  let south = Number.POSITIVE_INFINITY;
  let north = Number.NEGATIVE_INFINITY;
  for (let k = 0; k + 1 < lonLat.length; k += 2) {
    west = Math.min(west, lonLat[k]!);
    east = Math.max(east, lonLat[k]!);
    south = Math.min(south, lonLat[k + 1]!);
    north = Math.max(north, lonLat[k + 1]!);
  }
  return west <= at.lon + lon && east >= at.lon - lon && south <= at.lat + lat && north >= at.lat - lat;
}

/** Mapped features whose box comes that near. */
export const featuresNear = (features: readonly MapFeature[], at: LonLat, reachM: number): MapFeature[] =>
  features.filter(({ coordinates }) => lineNear(coordinates, at, reachM));
