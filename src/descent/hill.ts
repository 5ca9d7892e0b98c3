/**
 * The ground as a descent reads it, on the local metric plane (metres, x east, y north); heights in metres, `NaN` where
 * there are no data. `Ground` of terrain is turned into one by `hillOf`; tests hand in planes and cones.
 */
export interface Hill {
  /** Larger side of a cell, metres. */
  readonly cellM: number;
  /** True for coarse cells or a surface model. */
  readonly screeningOnly: boolean;
  /** Vertical accuracy, one sigma, metres; null where nobody states it. */
  readonly sigmaM: number | null;
  /** Bilinear heights at (x + i·dx, y + i·dy), i from 0 to n − 1, into out[offset + i]. */
  heights(x: number, y: number, dx: number, dy: number, n: number, out: Float64Array, offset: number): void;
  /** The same by cubic convolution, which keeps waves of a few cells that the bilinear surface flattens. */
  cubicHeights(x: number, y: number, dx: number, dy: number, n: number, out: Float64Array, offset: number): void;
  /** Rise per metre east and north, smoothed over about 3 m or 3 cells, into out[0], out[1]. */
  gradient(x: number, y: number, out: Float64Array): void;
}

/** Bilinear height at one point, metres. */
export function heightAtPoint(hill: Hill, x: number, y: number): number {
  hill.heights(x, y, 0, 0, 1, one, 0);
  return one[0];
}

const one = new Float64Array(1);
