import type { Knots } from './roughness-levels.ts';

/** Weights that turn heights at knots into the least-squares slope of one window sampled every half knot. */
export interface WindowWeights {
  /** Windows that start at a knot: weight of each knot from the first on. */
  readonly whole: Float64Array;
  /** Windows that start half-way to the next knot. */
  readonly half: Float64Array;
}

/** Half metres between knots lie on the straight line between them. */
export function windowWeights({ knotM, windowM }: Knots): WindowWeights {
  const q = Math.round(windowM / knotM);
  const points = 2 * q + 1;
  const middle = q / 2;
  let square = 0;
  for (let i = 0; i < points; i++) square += (i / 2 - middle) ** 2;
  const whole = new Float64Array(q + 1);
  const half = new Float64Array(q + 2);
  for (let i = 0; i < points; i++) {
    const weight = (i / 2 - middle) / square / knotM;
    spread(whole, i / 2, weight);
    spread(half, i / 2 + 0.5, weight);
  }
  return { whole, half };
}

export interface Steepest {
  /** Slope of the steepest window, tan, positive downward. */
  slope: number;
  /** Its start in half knots from the first knot. */
  halfKnot: number;
}

/** The steepest window of `fallM` (fall at each knot, metres), a start every half knot. Ties go to the first. */
export function steepestWindow(fallM: Float64Array, count: number, w: WindowWeights, out: Steepest): void {
  const { whole, half } = w;
  const q = whole.length - 1;
  let best = -Infinity;
  let where = 0;
  for (let i = 0; i + q < count; i++) {
    let slope = 0;
    for (let j = 0; j <= q; j++) slope += whole[j] * fallM[i + j];
    if (slope > best) {
      best = slope;
      where = 2 * i;
    }
    if (i + q + 1 < count) {
      slope = 0;
      for (let j = 0; j <= q + 1; j++) slope += half[j] * fallM[i + j];
      if (slope > best) {
        best = slope;
        where = 2 * i + 1;
      }
    }
  }
  out.slope = best;
  out.halfKnot = where;
}

function spread(weights: Float64Array, at: number, weight: number): void {
  const low = Math.floor(at);
  const part = at - low;
  weights[low] += weight * (1 - part);
  if (part > 0) weights[low + 1] += weight * part;
}
