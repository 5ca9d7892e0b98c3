import type { LocalPlane, PointM } from '../geo/index.ts';
import type { Route } from '../road/index.ts';

/** The point of a road line at a station, metres of the plane; past its ends the line goes straight on. */
export function pointOnRoute({ line, stationM }: Route, plane: LocalPlane, at: number): PointM {
  let low = 0;
  let high = stationM.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (stationM[middle]! <= at) low = middle;
    else high = middle;
  }
  const a = plane.toLocal({ lon: line[2 * low]!, lat: line[2 * low + 1]! });
  const b = plane.toLocal({ lon: line[2 * high]!, lat: line[2 * high + 1]! });
  const run = stationM[high]! - stationM[low]!;
  const t = run > 0 ? (at - stationM[low]!) / run : 0;
  return { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
}
