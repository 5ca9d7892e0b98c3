import { fillGradient } from './fill-gradient.ts';
import { type GradientFormula, gradientRow, type Row } from './gradient-row.ts';
import { fromGradient, type Product } from './product.ts';

/** The size of a raster and of its cells on the ground, metres; arrays hold one value a row, north first. */
export interface ProductShape {
  readonly width: number;
  readonly height: number;
  readonly eastM: number | ArrayLike<number>;
  readonly northM: number | ArrayLike<number>;
}

export interface ProductOptions {
  /** Horn where not said. */
  readonly formula?: GradientFormula;
  /** Also at the border and beside missing cells, by guesses; see `fillGradient`. Not where not said. */
  readonly computeEdges?: boolean;
}

/**
 * Slope, aspect or hillshade of a raster row by row, north first, so that a raster of any size needs three rows of memory.
 * `read` gives the heights of a row (metres, NaN without data) in an array that must stay as it is until three more rows were
 * asked for; `write` gets the product's row, NaN where it is not known, in an array that the next row writes over. Either may
 * return a promise.
 */
export async function streamProduct(
  product: Product,
  shape: ProductShape,
  read: (row: number) => Row | Promise<Row>,
  write: (row: number, values: Float32Array) => void | Promise<void>,
  options: ProductOptions = {},
): Promise<void> {
  const { width, height } = shape;
  const oneRow = productRows(product, shape, options);
  const out = new Float32Array(width);
  let north: Row | null = null;
  let here: Row | null = height > 0 ? await read(0) : null;
  for (let row = 0; here; row++) {
    const reading = row + 1 < height ? read(row + 1) : null;
    // No wait where there is nothing to wait for: it would cost more than the row.
    const south: Row | null = reading instanceof Promise ? await reading : reading;
    oneRow(row, north, here, south, out);
    const writing = write(row, out);
    if (writing) await writing;
    [north, here] = [here, south];
  }
}

/** The same of a raster in memory: Float32Array, row-major, north row first. */
export function rasterProduct(
  product: Product,
  shape: ProductShape,
  data: Row,
  options: ProductOptions = {},
): Float32Array {
  const { width, height } = shape;
  const rows = productRows(product, shape, options);
  const out = new Float32Array(width * height);
  const at = (row: number): Row | null =>
    row < 0 || row >= height ? null : data.subarray(row * width, (row + 1) * width);
  for (let row = 0; row < height; row++) {
    rows(row, at(row - 1), at(row)!, at(row + 1), out.subarray(row * width, (row + 1) * width));
  }
  return out;
}

type OneRow = (row: number, north: Row | null, here: Row, south: Row | null, out: Float32Array) => void;

function productRows(product: Product, shape: ProductShape, options: ProductOptions): OneRow {
  const { width, eastM, northM } = shape;
  const { formula = 'horn', computeEdges = false } = options;
  const gx = new Float64Array(width);
  const gy = new Float64Array(width);
  const beyond = new Float64Array(width);
  const convert = fromGradient(product);
  const side = (metres: number | ArrayLike<number>, row: number): number =>
    typeof metres === 'number' ? metres : metres[row];
  return (row, north, here, south, out) => {
    const outer = !north || !south;
    if (outer && (!computeEdges || width < 2 || (!north && !south))) {
      out.fill(Number.NaN);
      return;
    }
    if (outer) continued(here, (north ?? south)!, beyond);
    const east = side(eastM, row);
    const up = side(northM, row);
    const three = [north ?? beyond, here, south ?? beyond] as const;
    gradientRow(...three, formula, east, up, gx, gy);
    if (computeEdges && width > 1) fillGradient(three, outer, formula, east, up, gx, gy);
    convert(gx, gy, out);
  };
}

/** The row beyond the raster, in a straight line through its last two. */
function continued(last: Row, inner: Row, out: Float64Array): void {
  for (let i = 0; i < out.length; i++) out[i] = 2 * last[i] - inner[i];
}
