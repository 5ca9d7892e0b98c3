import type { LonLat } from '../../geo/index.ts';
import type { LonLatBox } from '../../io/index.ts';
import { type RoadIndex, type Route, routeThrough } from '../../road/index.ts';

/** A piece of a route whose roadside is worked out in one go; stations in metres, box in degrees. */
export interface RoadStretch {
  readonly key: string;
  readonly route: Route;
  readonly fromM: number;
  readonly toM: number;
  readonly middle: LonLat;
  readonly box: LonLatBox;
}

/** Longest stretch, metres: short enough to answer soon, long enough that its ends cost little. */
const STRETCH_M = 200;

/** Cuts every route of a network into stretches of equal length, at most 200 m; each way belongs to one route. */
export function roadStretches({ network, joins }: RoadIndex): RoadStretch[] {
  const seen = new Set<number>();
  const stretches: RoadStretch[] = [];
  for (let way = 0; way < network.ways.length; way++) {
    if (seen.has(way)) continue;
    const route = routeThrough(network, joins, way);
    for (const leg of route.legs) seen.add(leg.way);
    seen.add(way);
    const count = Math.max(1, Math.ceil(route.lengthM / STRETCH_M));
    for (let k = 0; k < count; k++) {
      const fromM = (route.lengthM * k) / count;
      const toM = (route.lengthM * (k + 1)) / count;
      const middle = positionAt(route, (fromM + toM) / 2);
      stretches.push({ key: `${way}:${k}`, route, fromM, toM, middle, box: boxOf(route, fromM, toM) });
    }
  }
  return stretches;
}

/** Position on a route at a station, metres from its start; straight between vertices in degrees. */
function positionAt({ line, stationM }: Route, at: number): LonLat {
  let k = 0;
  while (k < stationM.length - 2 && stationM[k + 1]! < at) k++;
  const run = stationM[k + 1]! - stationM[k]!;
  const t = run > 0 ? Math.min(1, Math.max(0, (at - stationM[k]!) / run)) : 0;
  return {
    lon: line[2 * k]! + t * (line[2 * k + 2]! - line[2 * k]!),
    lat: line[2 * k + 1]! + t * (line[2 * k + 3]! - line[2 * k + 1]!),
  };
}

function boxOf(route: Route, fromM: number, toM: number): LonLatBox {
  const { line, stationM } = route;
  const points = [positionAt(route, fromM), positionAt(route, toM)];
  for (let k = 0; k < stationM.length; k++) {
    if (stationM[k]! > fromM && stationM[k]! < toM) points.push({ lon: line[2 * k]!, lat: line[2 * k + 1]! });
  }
  return {
    west: Math.min(...points.map(({ lon }) => lon)),
    east: Math.max(...points.map(({ lon }) => lon)),
    south: Math.min(...points.map(({ lat }) => lat)),
    north: Math.max(...points.map(({ lat }) => lat)),
  };
}
