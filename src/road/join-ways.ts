import { azimuthGap, toDegrees } from '../units/index.ts';
import type { RoadNetwork, RoadWay } from './network.ts';
import { readRoadTags } from './tags.ts';

/** The end of a way: 0 its first position, 1 its last. */
export type WayEnd = 0 | 1;

/** For every way end (index 2 · way + end) the way end that continues it, or −1. Symmetric: partner[partner[i]] = i. */
export type WayJoins = Int32Array;

/** A turn sharper than this is a different road even under one name where there is a choice, degrees (judgement). */
const SHARPEST_TURN_DEG = 100;

/** Added to the turn of a join that would drive against a one-way, degrees: taken only where nothing else joins. */
const AGAINST_ONEWAY_DEG = 180;
/** Added where a two-way road parts into carriageways, to the one that runs against the road's drawing, degrees. */
const AGAINST_DRAWING_DEG = 30;

/**
 * Which way continues which: ways that meet end to end and share name or ref are joined, at a fork the straightest pair
 * first. Nameless ways of one class are joined only where no other road meets. The result does not depend on where one
 * starts, so that a study and a sweep walk the same routes.
 */
export function joinWays({ ways }: RoadNetwork): WayJoins {
  const joins = new Int32Array(ways.length * 2).fill(-1);
  for (const ends of endsByNode(ways).values()) {
    const pairs: { a: number; b: number; turnDeg: number }[] = [];
    for (let i = 0; i < ends.length; i++) {
      for (let j = i + 1; j < ends.length; j++) {
        const a = ends[i]!;
        const b = ends[j]!;
        if (a >> 1 === b >> 1 || !sameRoad(ways[a >> 1]!, ways[b >> 1]!, ends.length)) continue;
        const against = againstDeg(ways[a >> 1]!, a, ways[b >> 1]!, b);
        const turnDeg = 180 - azimuthGap(leavingDeg(ways[a >> 1]!, a), leavingDeg(ways[b >> 1]!, b)) + against;
        if (ends.length === 2 || turnDeg <= SHARPEST_TURN_DEG) pairs.push({ a, b, turnDeg });
      }
    }
    pairs.sort((p, q) => p.turnDeg - q.turnDeg || p.a - q.a || p.b - q.b);
    for (const { a, b } of pairs) {
      if (joins[a] !== -1 || joins[b] !== -1) continue;
      joins[a] = b;
      joins[b] = a;
    }
  }
  return joins;
}

/** Way ends by position, rounded to 1e-7°, about 1 cm: the resolution of the map data. */
function endsByNode(ways: readonly RoadWay[]): Map<string, number[]> {
  const nodes = new Map<string, number[]>();
  ways.forEach(({ line }, way) => {
    for (const end of [0, 1] as const) {
      const at = end === 0 ? 0 : line.length - 2;
      const key = `${Math.round(line[at]! * 1e7)},${Math.round(line[at + 1]! * 1e7)}`;
      const known = nodes.get(key);
      if (known) known.push(2 * way + end);
      else nodes.set(key, [2 * way + end]);
    }
  });
  return nodes;
}

function sameRoad(a: RoadWay, b: RoadWay, endsHere: number): boolean {
  const shared = (key: string): boolean => a.tags[key] !== undefined && a.tags[key] === b.tags[key];
  if (shared('name') || shared('ref')) return true;
  return a.name === null && b.name === null && endsHere === 2 && a.tags.highway === b.tags.highway;
}

function againstDeg(a: RoadWay, aEnd: number, b: RoadWay, bEnd: number): number {
  const flows = [flow(a, aEnd), flow(b, bEnd)];
  if (flows[0] !== 0 && flows[1] !== 0) return flows[0] === flows[1] ? AGAINST_ONEWAY_DEG : 0;
  if (flows[0] === flows[1]) return 0;
  const drawn = [(aEnd & 1) === 0 ? 1 : -1, (bEnd & 1) === 0 ? 1 : -1];
  return (flows[0] || drawn[0]) === (flows[1] || drawn[1]) ? AGAINST_DRAWING_DEG : 0;
}

/** +1 where traffic leaves the node along this way only, −1 where it only arrives, 0 where both. */
function flow(way: RoadWay, end: number): number {
  const { oneway } = readRoadTags(way.tags);
  if (oneway === 'no') return 0;
  return (oneway === 'forward') === ((end & 1) === 0) ? 1 : -1;
}

/** Azimuth in which a way leaves its end, degrees; a flat earth at the node's latitude serves for a comparison. */
function leavingDeg({ line }: RoadWay, end: number): number {
  const n = line.length;
  const at = (end & 1) === 0 ? 0 : n - 2;
  const next = at === 0 ? 2 : n - 4;
  const east = (line[next]! - line[at]!) * Math.cos((line[at + 1]! * Math.PI) / 180);
  return toDegrees(Math.atan2(east, line[next + 1]! - line[at + 1]!));
}
