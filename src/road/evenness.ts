import { SECTION_STEP_M, type Sections } from './sections.ts';

/**
 * How even the ground is around each station and offset: a plane is fitted to 5 m across the road by 9 stations along it.
 * Arrays have `count` rows of `columns`; column c is `firstOffset + c · stride` samples from the centre line. NaN where any
 * of the ground is missing.
 */
export interface Evenness {
  readonly count: number;
  readonly columns: number;
  readonly firstOffset: number;
  readonly stride: number;
  /** Root mean square departure from the plane, metres. */
  readonly rms: Float64Array;
  /** Slope of the plane across the road, to the right, as a tangent (positive where the ground rises to the right). */
  readonly across: Float64Array;
  /** Slope of the plane along the road per station. */
  readonly along: Float64Array;
  /** Height of the plane at the middle, metres. */
  readonly height: Float64Array;
}

const HALF_ACROSS = 5;
const HALF_ALONG = 4;
const N_ACROSS = 2 * HALF_ACROSS + 1;
/** Sum of t² over the window across, in samples squared, and of k² over the window along, in stations squared. */
const STT = 110;
const skk = (from: number, to: number): number => {
  let sum = 0;
  for (let k = from; k <= to; k++) sum += k * k;
  return sum;
};

/** Evenness at samples −reach … +reach from the centre line, every `stride` samples. */
export function evenness(sections: Sections, reach: number, stride: number): Evenness {
  const { count, half, width, z } = sections;
  const limit = Math.min(reach, half - HALF_ACROSS);
  const sideColumns = Math.floor(limit / stride);
  const columns = 2 * sideColumns + 1;
  const firstOffset = -sideColumns * stride;
  const size = count * columns;
  const sum = new Float64Array(size);
  const tilt = new Float64Array(size);
  const square = new Float64Array(size);
  // Heights are taken from one level for the whole stretch, so that the sums of squares keep their digits.
  const level = firstHeight(z);
  for (let i = 0; i < count; i++) {
    for (let c = 0; c < columns; c++) {
      const middle = i * width + half + firstOffset + c * stride;
      let s0 = 0;
      let s1 = 0;
      let s2 = 0;
      for (let t = -HALF_ACROSS; t <= HALF_ACROSS; t++) {
        const h = z[middle + t]! - level;
        s0 += h;
        s1 += t * h;
        s2 += h * h;
      }
      const at = i * columns + c;
      sum[at] = s0;
      tilt[at] = s1;
      square[at] = s2;
    }
  }
  const field = {
    rms: new Float64Array(size),
    across: new Float64Array(size),
    along: new Float64Array(size),
    height: new Float64Array(size),
  };
  for (let i = 0; i < count; i++) {
    const from = -Math.min(HALF_ALONG, i);
    const to = Math.min(HALF_ALONG, count - 1 - i);
    const rows = to - from + 1;
    const n = rows * N_ACROSS;
    const kMean = (from + to) / 2;
    const spread = N_ACROSS * (skk(from, to) - rows * kMean * kMean);
    for (let c = 0; c < columns; c++) {
      let s0 = 0;
      let s1 = 0;
      let s2 = 0;
      let sk = 0;
      for (let k = from; k <= to; k++) {
        const at = (i + k) * columns + c;
        s0 += sum[at]!;
        s1 += tilt[at]!;
        s2 += square[at]!;
        sk += k * sum[at]!;
      }
      const mean = s0 / n;
      const b = s1 / (rows * STT);
      const g = spread > 0 ? (sk - kMean * s0) / spread : 0;
      const left = s2 - n * mean * mean - rows * STT * b * b - spread * g * g;
      const at = i * columns + c;
      field.rms[at] = Math.sqrt(Math.max(0, left) / n);
      field.across[at] = b / SECTION_STEP_M;
      field.along[at] = g;
      field.height[at] = mean - kMean * g + level;
    }
  }
  return { count, columns, firstOffset, stride, ...field };
}

const firstHeight = (z: Float64Array): number => {
  for (const h of z) if (!Number.isNaN(h)) return h;
  return 0;
};
