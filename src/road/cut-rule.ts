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
  const reach = new Float64Array(2 * count).fill(limitM);
  const far = Math.min(OTHER_STRETCH_M, count);
  const own = new Float64Array(2 * count);
  for (let i = 0; i < count; i++) {
    own[2 * i] = x[i]!;
    own[2 * i + 1] = y[i]!;
  }
  const others = awayFromRoad(line, rest);
  for (let i = 0; i < count; i++) {
    const section = { px: x[i]!, py: y[i]!, nx: nx[i]!, ny: ny[i]!, limitM };
    shorten(reach, i, section, own, 0, i - far + 1);
    shorten(reach, i, section, own, i + far, count);
    shorten(reach, i, section, others, 0, others.length / 2);
    const bend = curvature[i]!;
    if (bend > 0) reach[2 * i + 1] = Math.min(reach[2 * i + 1]!, RADIUS_SHARE / bend);
    if (bend < 0) reach[2 * i] = Math.min(reach[2 * i]!, -RADIUS_SHARE / bend);
  }
  return reach;
}

/** A section: its middle, its unit normal to the right, and how far it may reach at most, metres. */
interface Section {
  readonly px: number;
  readonly py: number;
  readonly nx: number;
  readonly ny: number;
  readonly limitM: number;
}

/** Takes the reaches of section i back to where its points are as near to points `from` to `to` (without) of a list. */
function shorten(reach: Float64Array, i: number, section: Section, points: Float64Array, from: number, to: number) {
  const { px, py, nx, ny, limitM } = section;
  const farthest = 4 * limitM * limitM;
  let left = reach[2 * i]!;
  let right = reach[2 * i + 1]!;
  for (let k = 2 * from; k < 2 * to; k += 2) {
    const dx = points[k]! - px;
    const dy = points[k + 1]! - py;
    const squared = dx * dx + dy * dy;
    if (squared > farthest) continue;
    const across = 2 * (dx * nx + dy * ny);
    if (across > 0) {
      if (squared < right * across) right = squared / across;
    } else if (squared < -left * across) left = -squared / across;
  }
  reach[2 * i] = left;
  reach[2 * i + 1] = right;
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
