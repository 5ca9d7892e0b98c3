import { type Ground, heightAt, sampleLine } from '../terrain/index.ts';
import type { Bench } from './bench-types.ts';
import { pointsEveryMetre, type StationedLine } from './stationed-line.ts';

/** Heights of a driver's eye and of what must be seen on the road, metres [source: aashto-green-book] (recalled). */
const EYE_M = 1.08;
const OBJECT_M = 0.6;
/** Sight is followed this far along the road, metres. */
export const SIGHT_REACH_M = 300;
/** Next to eye and object the ground is the road itself and hides nothing, metres. */
const CLEAR_M = 1;

/** How far an approaching driver sees the site, along the road, and what ends it. At best: plants are not seen. */
export interface Sight {
  readonly distanceM: number;
  readonly ends: 'blocked' | 'road ends' | 'no data' | 'limit';
}

/** Sight from drivers who come along the drawing of the road (`before` the site) and against it (`after`). */
export interface SightBothWays {
  readonly before: Sight;
  readonly after: Sight;
}

/**
 * Sight distance to a station of a road, along the road from both approaches: the farthest from which a 0.6 m object there
 * is seen without a break by an eye at 1.08 m, over the ground between them. `line` is the road as drawn, `bench` what was
 * found beside it; past the bench its last shift goes on.
 */
export function sightAlong(ground: Ground, line: StationedLine, bench: Bench, stationM: number): SightBothWays {
  return {
    before: sightOneWay(ground, line, bench, stationM, -1),
    after: sightOneWay(ground, line, bench, stationM, 1),
  };
}

function sightOneWay(ground: Ground, line: StationedLine, bench: Bench, stationM: number, way: -1 | 1): Sight {
  const object = roadPoint(line, bench, stationM);
  const oz = heightAt(ground, object.x, object.y) + OBJECT_M;
  const end = way < 0 ? stationM - line.stationM[0] : line.stationM.at(-1)! - stationM;
  const between = new Float64Array(SIGHT_REACH_M + 2);
  for (let d = 1; d <= SIGHT_REACH_M; d++) {
    if (d > end) return { distanceM: d - 1, ends: 'road ends' };
    const eye = roadPoint(line, bench, stationM + way * d);
    const ez = heightAt(ground, eye.x, eye.y) + EYE_M;
    const chord = Math.hypot(eye.x - object.x, eye.y - object.y);
    const n = Math.max(2, Math.ceil(chord));
    const dx = (eye.x - object.x) / n;
    const dy = (eye.y - object.y) / n;
    sampleLine(ground, object.x, object.y, dx, dy, n, between);
    for (let k = 0; k < n; k++) {
      const t = k / n;
      const ray = oz + t * (ez - oz);
      if (Number.isNaN(between[k] - ray)) return { distanceM: d - 1, ends: 'no data' };
      if (t * chord < CLEAR_M || (1 - t) * chord < CLEAR_M) continue;
      if (between[k] > ray) return { distanceM: d - 1, ends: 'blocked' };
    }
  }
  return { distanceM: SIGHT_REACH_M, ends: 'limit' };
}

/** The middle of the road at a station: the drawn line moved by the shift found there. */
function roadPoint(line: StationedLine, { firstStationM, count, shiftM }: Bench, stationM: number) {
  const i = Math.min(count - 1, Math.max(0, Math.round(stationM - firstStationM)));
  const shift = Number.isNaN(shiftM[i]) ? 0 : shiftM[i];
  pointsEveryMetre(line, stationM - 0.5, 2, pairX, pairY);
  const dx = pairX[1] - pairX[0];
  const dy = pairY[1] - pairY[0];
  const length = Math.hypot(dx, dy) || 1;
  return {
    x: (pairX[0] + pairX[1]) / 2 + (shift * dy) / length,
    y: (pairY[0] + pairY[1]) / 2 - (shift * dx) / length,
  };
}

const pairX = new Float64Array(2);
const pairY = new Float64Array(2);
