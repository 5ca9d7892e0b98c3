import { insideRing, withinOfLine } from './shapes.ts';
import type { Area, Band, Surroundings } from './surroundings.ts';

/** Lines thinner than this are taken as this wide, metres: a mapped line is no better placed. */
const THINNEST_HALF_M = 0.5;

type Kind = Band['kind'] | Area['kind'];

/** Tells which mapped things stand at a point; shapes far from `reachM` around (x, y) are left out once. */
export function presence(around: Surroundings, x: number, y: number, reachM: number) {
  const bands = around.bands.filter((band) => near(band.line, x, y, reachM + band.halfWidthM));
  const areas = around.areas.filter((area) => near(area.ring, x, y, reachM));
  return (kind: Kind, px: number, py: number): boolean =>
    bands.some(
      (band) => band.kind === kind && withinOfLine(band.line, px, py, Math.max(band.halfWidthM, THINNEST_HALF_M)),
    ) || areas.some((area) => area.kind === kind && insideRing(area.ring, px, py));
}

export type Presence = ReturnType<typeof presence>;

function near(points: Float64Array, x: number, y: number, reachM: number): boolean {
  let west = Infinity;
  let east = -Infinity;
  let south = Infinity;
  let north = -Infinity;
  for (let i = 0; i + 1 < points.length; i += 2) {
    west = Math.min(west, points[i]);
    east = Math.max(east, points[i]);
    south = Math.min(south, points[i + 1]);
    north = Math.max(north, points[i + 1]);
  }
  return x + reachM >= west && x - reachM <= east && y + reachM >= south && y - reachM <= north;
}
