import type { SlopeCase, SlopeGround } from './slope-ground.ts';

export interface SlopeSample {
  /** Heights at whole knots from cubic convolution of the posts, and bilinear heights every half metre, metres. */
  readonly knotHeightM: Float64Array;
  readonly bilinearM: Float64Array;
  /** Steepest least-squares window of the truth, a start every 0.5 m, degrees. */
  readonly truthDeg: number;
  readonly truthStartM: number;
}

/** Samples one hillside as the program would: 1 m knots, 5 m windows. Own arithmetic, a twin of `src/terrain` and `src/descent`. */
export function sampleSlope(ground: SlopeGround, c: SlopeCase, windowM = 5, knotM = 1): SlopeSample {
  const [x0, y0] = ground.start;
  const [ux, uy] = ground.direction;
  const memo = new Map<number, number>();
  const post = (col: number, row: number): number => {
    const key = (col + 4096) * 8192 + row + 4096;
    let z = memo.get(key);
    if (z === undefined) {
      z = ground.post(col, row);
      memo.set(key, z);
    }
    return z;
  };
  const knotHeightM = Float64Array.from({ length: Math.floor(c.lengthM / knotM) + 1 }, (_, k) =>
    keys(post, (x0 + ux * k * knotM) / c.cellM, (y0 + uy * k * knotM) / c.cellM),
  );
  const halves = Math.floor(c.lengthM * 2) + 1;
  const bilinearM = Float64Array.from({ length: halves }, (_, i) =>
    bilinear(post, (x0 + (ux * i) / 2) / c.cellM, (y0 + (uy * i) / 2) / c.cellM),
  );
  const truth = Float64Array.from({ length: halves }, (_, i) => ground.truth(x0 + (ux * i) / 2, y0 + (uy * i) / 2));
  const [slope, start] = steepestPlain(truth, 0.5, Math.min(windowM, (halves - 1) / 2));
  return { knotHeightM, bilinearM, truthDeg: Math.atan(slope) * (180 / Math.PI), truthStartM: start };
}

/** Steepest least-squares window by brute force: slope (tan, downward positive) and start in metres. */
export function steepestPlain(heightM: ArrayLike<number>, stepM: number, windowM: number): [number, number] {
  const m = Math.round(windowM / stepM);
  let best = -Infinity;
  let where = 0;
  for (let i = 0; i + m < heightM.length; i++) {
    let xz = 0;
    let xx = 0;
    for (let j = 0; j <= m; j++) {
      const x = (j - m / 2) * stepM;
      xz += x * heightM[i + j];
      xx += x * x;
    }
    if (-xz / xx > best) {
      best = -xz / xx;
      where = i * stepM;
    }
  }
  return [best, where];
}

type Post = (col: number, row: number) => number;

function bilinear(post: Post, x: number, y: number): number {
  const c = Math.floor(x);
  const r = Math.floor(y);
  const fx = x - c;
  const fy = y - r;
  const top = post(c, r) * (1 - fx) + post(c + 1, r) * fx;
  const bottom = post(c, r + 1) * (1 - fx) + post(c + 1, r + 1) * fx;
  return top * (1 - fy) + bottom * fy;
}

/** Cubic convolution with a = −1/2 (Keys 1981). */
export function keys(post: Post, x: number, y: number): number {
  const c = Math.floor(x);
  const r = Math.floor(y);
  let sum = 0;
  for (let j = -1; j <= 2; j++) {
    const wy = kernel(y - r - j);
    for (let i = -1; i <= 2; i++) sum += wy * kernel(x - c - i) * post(c + i, r + j);
  }
  return sum;
}

function kernel(t: number): number {
  const d = Math.abs(t);
  if (d < 1) return 1.5 * d ** 3 - 2.5 * d ** 2 + 1;
  return d < 2 ? -0.5 * d ** 3 + 2.5 * d ** 2 - 4 * d + 2 : 0;
}
