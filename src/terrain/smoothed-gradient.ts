import { sampleLine } from './sample-line.ts';
import type { Ground } from './surface.ts';

/** Samples each way, and their spacing and weight scale in cells: a plane seen through about three cells. */
const REACH = 2;
const SIDE = 2 * REACH + 1;
const heights = new Float64Array(SIDE);
const weight = Float64Array.from({ length: SIDE * SIDE }, (_, k) => {
  const i = (k % SIDE) - REACH;
  const j = Math.floor(k / SIDE) - REACH;
  return Math.exp(-(i * i + j * j) / 2);
});
const squares = weight.reduce((sum, w, k) => sum + w * ((k % SIDE) - REACH) ** 2, 0);

/**
 * Rise per metre east and north at a point of the local plane, into out[0] and out[1]: the plane of least squares through
 * 5 × 5 bilinear samples one `spacingM` apart, weighted by a Gaussian of one spacing, so that waves shorter than about
 * three cells do not turn it. NaN where a sample has no data.
 */
export function smoothedGradient(ground: Ground, spacingM: number, x: number, y: number, out: Float64Array): void {
  let east = 0;
  let north = 0;
  for (let j = 0; j < SIDE; j++) {
    sampleLine(ground, x - REACH * spacingM, y + (j - REACH) * spacingM, spacingM, 0, SIDE, heights, 0);
    for (let i = 0; i < SIDE; i++) {
      const w = weight[j * SIDE + i] * heights[i];
      east += (i - REACH) * w;
      north += (j - REACH) * w;
    }
  }
  out[0] = east / (squares * spacingM);
  out[1] = north / (squares * spacingM);
}
