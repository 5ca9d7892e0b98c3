import { wander } from '../fields/wander.ts';
import { type Feature, features, type RoadKey, seed } from '../recipe.ts';
import { type Line, lineOf } from '../road/line.ts';
import type { RoadDesign } from '../road/road-design.ts';

/** One way of a road as the map has it: the drawn line and its tags. */
export interface DrawnWay {
  readonly id: number;
  readonly road: RoadKey;
  readonly second: boolean;
  /** Stations of the true middle line that it covers. */
  readonly from: number;
  readonly to: number;
  readonly line: Line;
  readonly tags: Readonly<Record<string, string>>;
}

interface Part {
  readonly road: RoadKey;
  readonly from: number;
  readonly to: number;
  readonly tags: Readonly<Record<string, string>>;
  /** Drawn this far beside the bench, metres to the right. */
  readonly asideM?: number;
}

const lantern = { highway: 'tertiary', name: 'Lantern Creek Road', surface: 'asphalt', maxspeed: '35 mph' };
const cinder = { highway: 'unclassified', name: 'Cinder Grade Road', surface: 'asphalt' };
const quarry = { highway: 'track', name: 'Old Quarry Spur', surface: 'gravel', tracktype: 'grade2' };

const end = 1e6;

/** The ways; some have lanes and widths, some not, and the upper Old Quarry Spur is drawn 4 m off its bench. */
const parts: readonly Part[] = [
  { road: 'lantern', from: 0, to: 900, tags: { ...lantern, lanes: '2', width: '6.4' } },
  { road: 'lantern', from: 900, to: 1660, tags: { ...lantern, lanes: '2' } },
  { road: 'lantern', from: 1660, to: 1840, tags: { ...lantern, oneway: 'yes', lanes: '1' } },
  { road: 'lantern', from: 1840, to: 2030, tags: { ...lantern, lanes: '2', width: '6.4' } },
  { road: 'lantern', from: 2030, to: 2330, tags: { ...lantern, lanes: '2', width: '6.4', shoulder: 'right' } },
  { road: 'lantern', from: 2330, to: 3168, tags: lantern },
  { road: 'lantern', from: 3168, to: 3238, tags: { ...lantern, bridge: 'yes', layer: '1', lanes: '2' } },
  { road: 'lantern', from: 3238, to: end, tags: { ...lantern, lanes: '2' } },
  { road: 'cinder', from: 0, to: 1300, tags: { ...cinder, lanes: '2', maxspeed: '30 mph' } },
  { road: 'cinder', from: 1300, to: 2200, tags: { ...cinder, width: '5.5' } },
  { road: 'cinder', from: 2200, to: end, tags: cinder },
  { road: 'quarry', from: 0, to: 860, tags: { ...quarry, width: '4.5' } },
  { road: 'quarry', from: 860, to: end, tags: quarry, asideM: 4 },
];

/** Everyday error of a drawn line: rms of its smooth part, metres, and its wave length's quarter. */
const ERROR_M = 0.8;
const ERROR_SCALE_M = 40;
/** A drawn line's corners may cut this much off, metres. */
const SIMPLE_M = 0.25;

/** Draws the roads as a map would have them: corners a few metres apart, half a metre to a metre and a half off. */
export function drawWays(roads: readonly RoadDesign[]): DrawnWay[] {
  const out: DrawnWay[] = [];
  for (const road of roads) {
    const mine = parts.filter((part) => part.road === road.key);
    if (road.second) out.push(secondWay(road, features.find((f) => f.what === 'divided')!, mine[0].tags));
    else for (const part of mine) out.push({ ...drawPart(road, part), id: 0, second: false });
  }
  return joinStarts(out).map((way, k) => ({ ...way, id: 1001 + k }));
}

function drawPart(
  road: RoadDesign,
  { from, to: until, tags, asideM = 0, road: key }: Part,
): Omit<DrawnWay, 'id' | 'second'> {
  const last = road.line.s.length - 1;
  const to = Math.min(last, until);
  const error = wander(last + 1, ERROR_SCALE_M, seed + 300 + key.length);
  const x: number[] = [];
  const y: number[] = [];
  for (let i = from; i <= to; i++) {
    // A way drawn aside swings out over 30 m from the way before it.
    const swing = Math.min(1, (i - from) / 30);
    const aside = Math.max(-1.5, Math.min(1.5, ERROR_M * error[i])) + asideM * swing;
    x.push(road.line.x[i] + road.ty[i] * aside);
    y.push(road.line.y[i] - road.tx[i] * aside);
  }
  const kept = simplified(x, y);
  return {
    road: key,
    from,
    to,
    tags,
    line: lineOf(
      kept.map((k) => x[k]),
      kept.map((k) => y[k]),
    ),
  };
}

/** The second carriageway: one way, against the first. */
function secondWay(road: RoadDesign, feature: Feature, tags: Readonly<Record<string, string>>): DrawnWay {
  const drawn = drawPart(road, { road: road.key, from: 0, to: end, tags: { ...tags, oneway: 'yes', lanes: '1' } });
  const line = lineOf(drawn.line.x.slice().reverse(), drawn.line.y.slice().reverse());
  return { ...drawn, id: 0, second: true, from: feature.from, to: feature.to, line };
}

/** Corners to keep so that none left out lies more than SIMPLE_M off (Douglas and Peucker 1973). */
function simplified(x: readonly number[], y: readonly number[]): number[] {
  const keep = new Set([0, x.length - 1]);
  const stack: [number, number][] = [[0, x.length - 1]];
  for (let span = stack.pop(); span; span = stack.pop()) {
    const [a, b] = span;
    const dx = x[b] - x[a];
    const dy = y[b] - y[a];
    const length = Math.hypot(dx, dy) || 1;
    let worst = SIMPLE_M;
    let at = -1;
    for (let k = a + 1; k < b; k++) {
      const off = Math.abs(dx * (y[k] - y[a]) - dy * (x[k] - x[a])) / length;
      if (off <= worst) continue;
      worst = off;
      at = k;
    }
    if (at < 0) continue;
    keep.add(at);
    stack.push([a, at], [at, b]);
  }
  return [...keep].sort((a, b) => a - b);
}

/** Starts the roads that join another, and the second carriageway's ends, on a corner of the way that they meet. */
function joinStarts(ways: DrawnWay[]): DrawnWay[] {
  const corners = ways.filter((way) => way.road === 'lantern' && !way.second).map((way) => way.line);
  const nearest = (x: number, y: number): [number, number] => {
    let best: [number, number] = [x, y];
    let distance = Number.POSITIVE_INFINITY;
    for (const line of corners) {
      for (let k = 0; k < line.x.length; k++) {
        const d = Math.hypot(line.x[k] - x, line.y[k] - y);
        if (d >= distance) continue;
        distance = d;
        best = [line.x[k], line.y[k]];
      }
    }
    return best;
  };
  return ways.map((way) => {
    const starts = (way.road !== 'lantern' && way.from === 0) || way.second;
    if (!starts) return way;
    const x = way.line.x.slice();
    const y = way.line.y.slice();
    [x[0], y[0]] = nearest(x[0], y[0]);
    const last = x.length - 1;
    if (way.second) [x[last], y[last]] = nearest(x[last], y[last]);
    return { ...way, line: lineOf(x, y) };
  });
}

/** A road's ways as one line, first carriageway only. */
export function drawnRoute(ways: readonly DrawnWay[], key: RoadKey): Line {
  const x: number[] = [];
  const y: number[] = [];
  for (const way of ways) {
    if (way.road !== key || way.second) continue;
    const skip = x.length ? 1 : 0;
    x.push(...way.line.x.slice(skip));
    y.push(...way.line.y.slice(skip));
  }
  return lineOf(x, y);
}
