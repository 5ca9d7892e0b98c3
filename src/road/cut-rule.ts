import type { CentreLine } from './centre-line.ts';

/** Stations farther apart than this along the road are different stretches of it, metres. */
const OTHER_STRETCH_M = 30;

/** Share of the radius of curvature at which a section ends: beyond the centre it would read the road's other arm. */
const RADIUS_SHARE = 0.95;

/** Points nearer than this to the road line belong to a junction and cut nothing, metres (judgement). */
const JUNCTION_M = 10;

/**
 * How far each section may reach before its points lie nearer to another stretch of the same road, to another road, or
 * past the centre of curvature. `rest` holds points (x, y, stride 2) of the road beyond this line and of other roads, about
 * 2 m apart. Returns reaches in metres, at most `limitM`: to the left, then to the right of station i at [2i], [2i + 1].
 *
 *     A point P + t·n is as far from Q as from P where t = |Q − P|² / (2 n·(Q − P)).
 */
export function sectionReach(line: CentreLine, rest: Float64Array, limitM: number): Float64Array {
  const { count, x, y, nx, ny, curvature } = line;
  const reach = new Float64Array(2 * count);
  const far = Math.min(OTHER_STRETCH_M, count);
  const others = awayFromRoad(line, rest);
  for (let i = 0; i < count; i++) {
    const px = x[i]!;
    const py = y[i]!;
    const ax = nx[i]!;
    const ay = ny[i]!;
    let left = limitM;
    let right = limitM;
    const meet = (qx: number, qy: number): void => {
      const dx = qx - px;
      const dy = qy - py;
      const squared = dx * dx + dy * dy;
      if (squared > 4 * limitM * limitM) return;
      const across = 2 * (dx * ax + dy * ay);
      if (across > 0) {
        if (squared < right * across) right = squared / across;
      } else if (squared < -left * across) left = -squared / across;
    };
    for (let j = 0; j <= i - far; j++) meet(x[j]!, y[j]!);
    for (let j = i + far; j < count; j++) meet(x[j]!, y[j]!);
    for (let k = 0; k < others.length; k += 2) meet(others[k]!, others[k + 1]!);
    const bend = curvature[i]!;
    if (bend > 0) right = Math.min(right, RADIUS_SHARE / bend);
    if (bend < 0) left = Math.min(left, -RADIUS_SHARE / bend);
    reach[2 * i] = left;
    reach[2 * i + 1] = right;
  }
  return reach;
}

function awayFromRoad({ count, x, y }: CentreLine, points: Float64Array): Float64Array {
  const kept: number[] = [];
  const limit = JUNCTION_M ** 2;
  for (let k = 0; k < points.length; k += 2) {
    let near = false;
    for (let i = 0; i < count && !near; i += 2)
      near = (x[i]! - points[k]!) ** 2 + (y[i]! - points[k + 1]!) ** 2 < limit;
    if (!near) kept.push(points[k]!, points[k + 1]!);
  }
  return Float64Array.from(kept);
}
