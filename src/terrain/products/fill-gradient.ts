import { type GradientFormula, gradientRow, type Row } from './gradient-row.ts';

/**
 * Completes a row's gradient at the raster's border and beside missing cells the way gdaldem's -compute_edges does: cells
 * beyond the left and right border are continued in a straight line (in the first and last row: repeated), and a missing
 * neighbour is taken as high as the cell itself. Such values are guesses: for pictures, never for a study. A missing cell
 * stays missing. [source: gdal]
 */
export function fillGradient(
  rows: readonly [north: Row, here: Row, south: Row],
  outerRow: boolean,
  formula: GradientFormula,
  eastM: number,
  northM: number,
  gx: Float64Array,
  gy: Float64Array,
): void {
  const here = rows[1];
  const last = here.length - 1;
  for (let i = 0; i <= last; i++) {
    const own = here[i];
    if (!Number.isNaN(gx[i] + gy[i]) || Number.isNaN(own)) continue;
    for (let r = 0; r < 3; r++) {
      const row = rows[r];
      const nine = window[r];
      nine[0] = orOwn(i > 0 ? row[i - 1] : outerRow ? row[0] : 2 * row[0] - row[1], own);
      nine[1] = orOwn(row[i], own);
      nine[2] = orOwn(i < last ? row[i + 1] : outerRow ? row[last] : 2 * row[last] - row[last - 1], own);
    }
    gradientRow(window[0], window[1], window[2], formula, eastM, northM, oneX, oneY);
    gx[i] = oneX[1];
    gy[i] = oneY[1];
  }
}

const window = [new Float64Array(3), new Float64Array(3), new Float64Array(3)] as const;
const oneX = new Float64Array(3);
const oneY = new Float64Array(3);

const orOwn = (height: number, own: number): number => (Number.isNaN(height) ? own : height);
