import type { RoadWay } from './network.ts';
import type { StationedLine } from './stationed-line.ts';
import type { Span } from './structures.ts';
import type { RoadTraits } from './tags.ts';

/** Points of one other way, about 2 m apart, local metres, stride 2, in its drawing direction. */
export interface OtherRoad {
  readonly way: number;
  readonly points: Float64Array;
}

/** The other carriageway of a divided road runs within this distance, metres (judgement). */
const NEAR_M = 30;

/**
 * The stretches of a one-way carriageway that have their opposite carriageway beside them, each with the side on which it
 * lies: a one-way way of the same name or ref within 30 m. `legs` are those of the route, with the tags of their ways.
 */
export function mediansOf(
  line: StationedLine,
  legs: readonly (Span & { readonly way: number; readonly traits: RoadTraits })[],
  ways: readonly RoadWay[],
  others: readonly OtherRoad[],
): (Span & { side: -1 | 1 })[] {
  const medians: (Span & { side: -1 | 1 })[] = [];
  for (const { way, fromM, toM, traits } of legs) {
    if (traits.oneway === 'no') continue;
    const twins = others.filter((other) => isTwin(ways[way], ways[other.way]));
    if (twins.length === 0) continue;
    for (let k = 0; k + 1 < line.x.length; k++) {
      const from = Math.max(fromM, line.stationM[k]);
      const to = Math.min(toM, line.stationM[k + 1]);
      if (to <= from) continue;
      const side = sideOfTwin(line, k, twins);
      if (side !== 0) medians.push({ fromM: from, toM: to, side });
    }
  }
  return medians;
}

function isTwin(own: RoadWay, other: RoadWay): boolean {
  const shared = (key: string): boolean => own.tags[key] !== undefined && own.tags[key] === other.tags[key];
  return (shared('name') || shared('ref')) && other.tags.oneway !== undefined && other.tags.oneway !== 'no';
}

/** Side of the nearest twin point beside segment k, 0 where none is near. */
function sideOfTwin({ x, y }: StationedLine, k: number, twins: readonly OtherRoad[]): -1 | 0 | 1 {
  const dx = x[k + 1] - x[k];
  const dy = y[k + 1] - y[k];
  const length = Math.hypot(dx, dy) || 1;
  const mx = (x[k] + x[k + 1]) / 2;
  const my = (y[k] + y[k + 1]) / 2;
  let nearest = NEAR_M;
  let side: -1 | 0 | 1 = 0;
  for (const { points } of twins) {
    for (let i = 0; i < points.length; i += 2) {
      const px = points[i] - mx;
      const py = points[i + 1] - my;
      const right = (px * dy - py * dx) / length;
      const along = (px * dx + py * dy) / length;
      if (Math.abs(along) > length / 2 + NEAR_M || Math.hypot(px, py) > NEAR_M + length / 2) continue;
      const distance = Math.hypot(right, Math.max(0, Math.abs(along) - length / 2));
      if (distance >= nearest) continue;
      nearest = distance;
      side = right > 0 ? 1 : -1;
    }
  }
  return side;
}
