/** How one number is stored. */
export type SampleType = 'uint8' | 'int8' | 'uint16' | 'int16' | 'uint32' | 'int32' | 'float32' | 'float64';

/** Bytes of one number. */
export const SAMPLE_BYTES: Readonly<Record<SampleType, number>> = {
  uint8: 1,
  int8: 1,
  uint16: 2,
  int16: 2,
  uint32: 4,
  int32: 4,
  float32: 4,
  float64: 8,
};

/**
 * How one block (tile or strip) of a raster is packed and what its numbers mean: height in metres = stored number · `scale`
 * + `offset`. Plain data, so that it can cross to a worker.
 */
export interface BlockFormat {
  /** TIFF compression code, for example 8 for deflate. */
  readonly compression: number;
  /** TIFF predictor: 1 none, 2 horizontal differences, 3 floating point. */
  readonly predictor: number;
  readonly sample: SampleType;
  readonly littleEndian: boolean;
  /** Cells in a row of the block. */
  readonly width: number;
  /** Rows of the block. */
  readonly height: number;
  /** What LERC blocks are packed in once more: 0 nothing, 1 deflate, 2 zstd. */
  readonly lercPacking: number;
  /** The stored number that means no data; NaN always does. */
  readonly noData: number | null;
  readonly scale: number;
  readonly offset: number;
}

/** Heights of a block in metres, row-major in the order of the file, NaN where there is no data. */
export type BlockHeights = Float32Array | Float64Array;
