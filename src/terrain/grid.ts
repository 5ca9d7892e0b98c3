/**
 * A raster of heights in its own coordinate reference system.
 *
 * The pixel rule, written once: `data[row * width + col]` is the height at the CENTRE of a cell, metres, row-major, north
 * row first, `NaN` where the file has no data. (x0, y0) is the centre of the north-west cell in CRS units, so the centre of
 * cell (col, row) lies at x0 + col · stepX, y0 − row · stepY; both steps are positive. Pixel-is-point files are stated the
 * same way: their tie point already is a centre.
 */
export interface Grid {
  readonly width: number;
  readonly height: number;
  readonly data: Float32Array | Float64Array;
  readonly x0: number;
  readonly y0: number;
  readonly stepX: number;
  readonly stepY: number;
}
