/**
 * How a layer's twelve placement numbers turn plane metres into fractional cell-centre indices, written once:
 * column = f0 + f1·x + f2·y + f3·x·y + f8·x² + f9·y², row = f4 + f5·x + f6·y + f7·x·y + f10·x² + f11·y².
 */
export const PLACE_TERMS = 12;

/** Places of 1, x, y, x·y, x², y² among the numbers. */
export const COLUMN_TERMS = [0, 1, 2, 3, 8, 9] as const;
export const ROW_TERMS = [4, 5, 6, 7, 10, 11] as const;

/** Fractional column of a point of the plane; 0 is the centre of the westernmost cells. */
export const columnAt = (fit: Float64Array, x: number, y: number): number =>
  fit[0] + (fit[1] + fit[3] * y + fit[8] * x) * x + (fit[2] + fit[9] * y) * y;

/** Fractional row of a point of the plane; 0 is the centre of the northernmost cells. */
export const rowAt = (fit: Float64Array, x: number, y: number): number =>
  fit[4] + (fit[5] + fit[7] * y + fit[10] * x) * x + (fit[6] + fit[11] * y) * y;

/** Rounding of the placement, in cells: a point this far outside the outer centres is taken to lie on them. */
export const ON_BORDER = 1e-6;
