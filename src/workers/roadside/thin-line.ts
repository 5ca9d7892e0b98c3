import type { Position } from 'geojson';
import { toRadians } from '../../units/index.ts';

const METRES_PER_DEGREE = 111_320;

/**
 * A line with as few vertices as keep it within `toleranceM` metres of the full one; both ends stay. `line` holds lon, lat
 * pairs in degrees, a few hundred metres long. For the eye only.
 */
export function thinLine(line: Float64Array, toleranceM: number): Position[] {
  const count = line.length / 2;
  const perLon = METRES_PER_DEGREE * Math.cos(toRadians(line[1] ?? 0));
  const keep = new Uint8Array(count);
  const open: [number, number][] = [[0, count - 1]];
  keep[0] = 1;
  keep[count - 1] = 1;
  for (let pair = open.pop(); pair; pair = open.pop()) {
    const [from, to] = pair;
    const dx = (line[2 * to]! - line[2 * from]!) * perLon;
    const dy = (line[2 * to + 1]! - line[2 * from + 1]!) * METRES_PER_DEGREE;
    const length = Math.hypot(dx, dy);
    let farthest = toleranceM;
    let at = -1;
    for (let i = from + 1; i < to; i++) {
      const x = (line[2 * i]! - line[2 * from]!) * perLon;
      const y = (line[2 * i + 1]! - line[2 * from + 1]!) * METRES_PER_DEGREE;
      const off = length > 0 ? Math.abs(dx * y - dy * x) / length : Math.hypot(x, y);
      if (off > farthest) {
        farthest = off;
        at = i;
      }
    }
    if (at < 0) continue;
    keep[at] = 1;
    open.push([from, at], [at, to]);
  }
  const out: Position[] = [];
  for (let i = 0; i < count; i++) if (keep[i]) out.push([line[2 * i]!, line[2 * i + 1]!]);
  return out;
}
