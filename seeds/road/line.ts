/** A line in space, CRS metres; `s` is the length along it to each point. */
export interface Line {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  readonly s: Float64Array;
}

/** A curve through control points (x, y pairs, CRS metres) with a point about every `stepM`: a uniform cubic B-spline. */
export function splineThrough(points: readonly (readonly [number, number])[], stepM: number): Line {
  const x: number[] = [];
  const y: number[] = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const p = [points[Math.max(0, i - 1)], points[i], points[i + 1], points[Math.min(points.length - 1, i + 2)]];
    const pieces = Math.max(1, Math.ceil(Math.hypot(p[2][0] - p[1][0], p[2][1] - p[1][1]) / stepM));
    for (let k = 0; k < pieces; k++) {
      const t = k / pieces;
      const u = 1 - t;
      const w = [u * u * u, 3 * t * t * t - 6 * t * t + 4, 3 * u * u * u - 6 * u * u + 4, t * t * t];
      x.push((w[0] * p[0][0] + w[1] * p[1][0] + w[2] * p[2][0] + w[3] * p[3][0]) / 6);
      y.push((w[0] * p[0][1] + w[1] * p[1][1] + w[2] * p[2][1] + w[3] * p[3][1]) / 6);
    }
  }
  return lineOf(x, y);
}

/** A line from points, its lengths summed; heights zero. */
export function lineOf(x: ArrayLike<number>, y: ArrayLike<number>): Line {
  const s = new Float64Array(x.length);
  for (let i = 1; i < x.length; i++) s[i] = s[i - 1] + Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]);
  return { x: Float64Array.from(x), y: Float64Array.from(y), z: new Float64Array(x.length), s };
}

/** The same line with a point every `stepM` exactly (the last at its end), heights interpolated evenly. */
export function resample(line: Line, stepM: number): Line {
  const length = line.s[line.s.length - 1];
  const count = Math.floor(length / stepM + 1e-9) + 1;
  const out = { x: new Float64Array(count), y: new Float64Array(count), z: new Float64Array(count) };
  const s = new Float64Array(count);
  for (let k = 0, i = 0; k < count; k++) {
    s[k] = k * stepM;
    while (i + 2 < line.s.length && line.s[i + 1] < s[k]) i++;
    const t = (s[k] - line.s[i]) / (line.s[i + 1] - line.s[i]);
    for (const name of ['x', 'y', 'z'] as const) out[name][k] = line[name][i] + t * (line[name][i + 1] - line[name][i]);
  }
  return { ...out, s };
}
