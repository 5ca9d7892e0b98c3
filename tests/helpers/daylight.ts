import type { Along } from './road-ground.ts';

/** A hillside that a road is cut into: a plane, and the slopes of what is cut and what is filled, as tangents. */
export interface Hillside {
  /** Rise of the natural plane to the left of the road's first metres, and along them. */
  readonly acrossSlope: number;
  readonly alongSlope: number;
  readonly cut: number;
  readonly fill: number;
}

/** Slopes of a cut or fill are followed this far from the road, metres. */
const REACH_M = 45;

/**
 * Ground of a road cut into a plane hillside: the natural plane, held under the cut cones and over the fill cones of every
 * stretch of the road, so that the arms of a hairpin shape each other's slopes. (0, 0) of the plane is point `from`.
 */
export function daylight(
  hill: Hillside,
  x: Float64Array,
  y: Float64Array,
  z: Float64Array,
  from: number,
  heading: number,
  halfWidth: Along,
  stationOf: (i: number) => number,
): (px: number, py: number) => number {
  const step = 2;
  const halves = Float64Array.from(x, (_, i) => halfWidth(stationOf(i)));
  const farSq = halves.map((half) => (REACH_M + half + 0.01) ** 2);
  const [ux, uy] = [Math.cos(heading), Math.sin(heading)];
  return (px, py) => {
    const along = (px - x[from]) * ux + (py - y[from]) * uy;
    const left = -(px - x[from]) * uy + (py - y[from]) * ux;
    const natural = z[from] + hill.alongSlope * along + hill.acrossSlope * left;
    let over = Number.POSITIVE_INFINITY;
    let under = Number.NEGATIVE_INFINITY;
    let nearest = Number.POSITIVE_INFINITY;
    let nearestSq = nearest;
    let at = 0;
    for (let i = 0; i < x.length; i += step) {
      const [dx, dy] = [px - x[i], py - y[i]];
      const sq = dx * dx + dy * dy;
      // Too far for both: most points of a road are, and a square is soon made.
      if (sq > farSq[i] && sq > nearestSq) continue;
      const d = Math.hypot(dx, dy);
      if (d < nearest) {
        [nearest, at] = [d, i];
        nearestSq = d * d * (1 + 1e-12);
      }
      const beyond = Math.max(0, d - halves[i]);
      if (beyond > REACH_M) continue;
      over = Math.min(over, z[i] + hill.cut * beyond);
      under = Math.max(under, z[i] - hill.fill * beyond);
    }
    if (nearest <= halves[at]) return z[at];
    return under > over ? (under + over) / 2 : Math.min(over, Math.max(under, natural));
  };
}
