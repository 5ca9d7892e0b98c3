/**
 * A smooth line that sections are cut across: one point a station, local metres, with its unit normal to the RIGHT of the
 * direction of travel and its curvature in 1/m, positive where the line turns to the right.
 */
export interface CentreLine {
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly nx: Float64Array;
  readonly ny: Float64Array;
  readonly curvature: Float64Array;
}

/** Reach of the smoothing as one sigma, stations; a 12 m hairpin moves by 0.7 m under it. */
const SMOOTH_SIGMA = 4;
const HALF = 3 * SMOOTH_SIGMA;
const kernel = Float64Array.from({ length: 2 * HALF + 1 }, (_, i) =>
  Math.exp(-((i - HALF) ** 2) / (2 * SMOOTH_SIGMA ** 2)),
);

/** Stations that `centreLine` needs beyond each end of the line it returns. */
export const CENTRE_MARGIN = HALF + 1;

/**
 * The smoothed line through points one station apart. `x`, `y` hold `count` + 2 · CENTRE_MARGIN points, local metres; the
 * returned line leaves the margin off, so that an end is smoothed like any other place.
 */
export function centreLine(x: Float64Array, y: Float64Array, count: number): CentreLine {
  const n = count + 2;
  const sx = smooth(x, n);
  const sy = smooth(y, n);
  const line = {
    count,
    x: sx.slice(1, n - 1),
    y: sy.slice(1, n - 1),
    nx: new Float64Array(count),
    ny: new Float64Array(count),
    curvature: new Float64Array(count),
  };
  for (let i = 0; i < count; i++) {
    const dx = (sx[i + 2]! - sx[i]!) / 2;
    const dy = (sy[i + 2]! - sy[i]!) / 2;
    const ddx = sx[i + 2]! - 2 * sx[i + 1]! + sx[i]!;
    const ddy = sy[i + 2]! - 2 * sy[i + 1]! + sy[i]!;
    const speed = Math.hypot(dx, dy) || 1;
    line.nx[i] = dy / speed;
    line.ny[i] = -dx / speed;
    line.curvature[i] = (dy * ddx - dx * ddy) / speed ** 3;
  }
  return line;
}

function smooth(values: Float64Array, n: number): Float64Array {
  const out = new Float64Array(n);
  let total = 0;
  for (const w of kernel) total += w;
  for (let i = 0; i < n; i++) {
    let sum = 0;
    for (let k = 0; k < kernel.length; k++) sum += kernel[k]! * values[i + k]!;
    out[i] = sum / total;
  }
  return out;
}
