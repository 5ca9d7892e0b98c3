/** How the gradient of a cell is taken from its eight neighbours. */
export type GradientFormula = 'horn' | 'zevenbergen-thorne';

/** One row of heights, metres; NaN where there are no data. */
export type Row = Float32Array | Float64Array;

/**
 * Gradient of the cells of a row, rise per metre to the east into `gx` and to the north into `gy`, from the rows north of it,
 * itself and south of it. Horn's third-order difference weighs the middle neighbours double; Zevenbergen and Thorne take the
 * middle ones alone. `eastM` and `northM` are the cell's sides on the ground, metres. NaN in the first and last cell and where
 * one of the nine cells is missing. [source: horn1981; zevenbergen-thorne1987]
 */
export function gradientRow(
  north: Row,
  here: Row,
  south: Row,
  formula: GradientFormula,
  eastM: number,
  northM: number,
  gx: Float64Array,
  gy: Float64Array,
): void {
  const last = here.length - 1;
  gx[0] = gy[0] = gx[last] = gy[last] = Number.NaN;
  if (last < 2) return;
  if (formula === 'horn') horn(north, here, south, 1 / (8 * eastM), 1 / (8 * northM), gx, gy);
  else middles(north, here, south, 1 / (2 * eastM), 1 / (2 * northM), gx, gy);
}

function horn(north: Row, here: Row, south: Row, perX: number, perY: number, gx: Float64Array, gy: Float64Array): void {
  const last = here.length - 1;
  let a = north[0];
  let d = here[0];
  let g = south[0];
  let b = north[1];
  let e = here[1];
  let h = south[1];
  for (let i = 1; i < last; i++) {
    const c = north[i + 1];
    const f = here[i + 1];
    const j = south[i + 1];
    // The middle cell has no weight; a missing one must still count.
    gx[i] = (c + f + f + j - (a + d + d + g)) * perX + 0 * e;
    gy[i] = (a + b + b + c - (g + h + h + j)) * perY;
    a = b;
    d = e;
    g = h;
    b = c;
    e = f;
    h = j;
  }
}

function middles(
  north: Row,
  here: Row,
  south: Row,
  perX: number,
  perY: number,
  gx: Float64Array,
  gy: Float64Array,
): void {
  const last = here.length - 1;
  for (let i = 1; i < last; i++) {
    const unweighed = north[i - 1] + north[i + 1] + here[i] + south[i - 1] + south[i + 1];
    gx[i] = (here[i + 1] - here[i - 1]) * perX + 0 * unweighed;
    gy[i] = (north[i] - south[i]) * perY;
  }
}
