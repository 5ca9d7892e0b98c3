import { toRadians } from '../units/index.ts';
import { num } from './svg.ts';

/**
 * Path data of parallel lines inside a polygon (x, y pairs, drawing units, not closed), at an angle clockwise from the
 * page's x axis. Cut against the polygon itself: real lines stay lines on paper, and no clip needs a name that two drawings
 * on one page could share. Crossings are paired even-odd.
 */
export function hatch(polygon: readonly number[], angleDeg: number, spacing: number): string {
  const c = Math.cos(toRadians(angleDeg));
  const s = Math.sin(toRadians(angleDeg));
  const n = polygon.length / 2;
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  const u = new Float64Array(n);
  const v = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const x = polygon[2 * i];
    const y = polygon[2 * i + 1];
    u[i] = x * c + y * s;
    v[i] = y * c - x * s;
    least = Math.min(least, v[i]);
    most = Math.max(most, v[i]);
  }
  let d = '';
  for (let k = Math.ceil(least / spacing); k * spacing < most; k++) {
    // Off the grid by a hair, so that no line runs through a corner.
    const level = k * spacing + 1e-4;
    const cuts: number[] = [];
    for (let i = 0; i < n; i++) {
      const j = (i + 1) % n;
      if (v[i] > level !== v[j] > level) cuts.push(u[i] + ((u[j] - u[i]) * (level - v[i])) / (v[j] - v[i]));
    }
    cuts.sort((a, b) => a - b);
    for (let i = 0; i + 1 < cuts.length; i += 2)
      d += `M${page(cuts[i], level, c, s)}L${page(cuts[i + 1], level, c, s)}`;
  }
  return d;
}

const page = (u: number, v: number, c: number, s: number): string => `${num(u * c - v * s)} ${num(u * s + v * c)}`;
