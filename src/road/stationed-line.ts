import type { LocalPlane } from '../geo/index.ts';
import type { Route } from './routes.ts';

/** Part of a route on a local plane: vertices in metres and the station of each, rising, metres from the route's start. */
export interface StationedLine {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly stationM: Float64Array;
}

/** The part of a route between two stations as local metres, cut exactly there; both ends are kept within the route. */
export function routePart(route: Route, plane: LocalPlane, fromM: number, toM: number): StationedLine {
  const { line, stationM } = route;
  const from = Math.max(0, fromM);
  const to = Math.min(route.lengthM, toM);
  const x: number[] = [];
  const y: number[] = [];
  const s: number[] = [];
  const add = (station: number, k: number, share: number): void => {
    const a = plane.toLocal({ lon: line[2 * k]!, lat: line[2 * k + 1]! });
    const b = share > 0 ? plane.toLocal({ lon: line[2 * k + 2]!, lat: line[2 * k + 3]! }) : a;
    x.push(a.x + share * (b.x - a.x));
    y.push(a.y + share * (b.y - a.y));
    s.push(station);
  };
  for (let k = 0; k + 1 < stationM.length; k++) {
    const a = stationM[k]!;
    const b = stationM[k + 1]!;
    if (b <= from || a >= to) continue;
    if (a <= from) add(from, k, (from - a) / (b - a));
    else add(a, k, 0);
    if (b >= to) add(to, k, (to - a) / (b - a));
  }
  if (s.length > 0 && s.at(-1)! < to) add(to, stationM.length - 1, 0);
  return { x: Float64Array.from(x), y: Float64Array.from(y), stationM: Float64Array.from(s) };
}

/** A line that is not part of a network, stationed from 0 by its own plane length; `line` is x, y metres with stride 2. */
export function stationedLine(line: Float64Array): StationedLine {
  const n = line.length / 2;
  const x = new Float64Array(n);
  const y = new Float64Array(n);
  const stationM = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    x[i] = line[2 * i]!;
    y[i] = line[2 * i + 1]!;
    if (i > 0) stationM[i] = stationM[i - 1]! + Math.hypot(x[i]! - x[i - 1]!, y[i]! - y[i - 1]!);
  }
  return { x, y, stationM };
}

/** Points of a stationed line at `count` stations 1 m apart from `firstM`; past its ends it goes straight on. */
export function pointsEveryMetre(
  line: StationedLine,
  firstM: number,
  count: number,
  x: Float64Array,
  y: Float64Array,
): void {
  const { x: lx, y: ly, stationM } = line;
  const last = stationM.length - 1;
  let k = 0;
  for (let i = 0; i < count; i++) {
    const s = firstM + i;
    while (k < last - 1 && stationM[k + 1]! < s) k++;
    const t = (s - stationM[k]!) / (stationM[k + 1]! - stationM[k]!);
    x[i] = lx[k]! + t * (lx[k + 1]! - lx[k]!);
    y[i] = ly[k]! + t * (ly[k + 1]! - ly[k]!);
  }
}
