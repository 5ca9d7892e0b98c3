import type { BlockFormat, BlockHeights, SampleType } from './block-format.ts';

/**
 * Heights outside these bounds (metres) are no ground but a no-data number that the file does not declare (−9999, 32767):
 * the lowest dry land lies at −430 m, the highest at 8849 m (recalled, no source). They are taken as missing, because
 * such a number read as ground is a cliff.
 */
export const LOWEST_M = -1000;
export const HIGHEST_M = 9000;

type Stored =
  | Uint8Array
  | Int8Array
  | Uint16Array
  | Int16Array
  | Uint32Array
  | Int32Array
  | Float32Array
  | Float64Array;

/** Views bytes in this machine's order as numbers of a type. */
export function storedNumbers(bytes: Uint8Array<ArrayBuffer>, sample: SampleType): Stored {
  const { buffer } = bytes;
  switch (sample) {
    case 'uint8':
      return bytes;
    case 'int8':
      return new Int8Array(buffer);
    case 'uint16':
      return new Uint16Array(buffer);
    case 'int16':
      return new Int16Array(buffer);
    case 'uint32':
      return new Uint32Array(buffer);
    case 'int32':
      return new Int32Array(buffer);
    case 'float32':
      return new Float32Array(buffer);
    case 'float64':
      return new Float64Array(buffer);
  }
}

/** True where single precision would not hold the stored numbers: 32-bit whole numbers and doubles. */
export const needsDoubles = (sample: SampleType): boolean =>
  sample === 'float64' || sample === 'uint32' || sample === 'int32';

/**
 * Heights in metres of stored numbers, NaN where there is no data: the declared number (compared as the file's own type
 * holds it), NaN, infinity, or a height that cannot be ground. Single precision unless `needsDoubles`; float arrays are
 * changed in place.
 */
export function toHeights(stored: Stored, format: BlockFormat): BlockHeights {
  const { scale, offset, sample } = format;
  const doubles = needsDoubles(sample);
  const noData = declared(format);
  const out = doubles
    ? stored instanceof Float64Array
      ? stored
      : new Float64Array(stored.length)
    : stored instanceof Float32Array
      ? stored
      : new Float32Array(stored.length);
  if (scale === 1 && offset === 0) {
    for (let i = 0; i < stored.length; i++) {
      const value = stored[i];
      out[i] = value >= LOWEST_M && value <= HIGHEST_M && value !== noData ? value : Number.NaN;
    }
    return out;
  }
  for (let i = 0; i < stored.length; i++) {
    const value = stored[i];
    const height = value * scale + offset;
    out[i] = height >= LOWEST_M && height <= HIGHEST_M && value !== noData ? height : Number.NaN;
  }
  return out;
}

/** The no-data number as the file's type holds it: texts such as −3.4028234663852886e+38 come rounded. */
function declared({ noData, sample }: BlockFormat): number {
  if (noData === null) return Number.NaN;
  return sample === 'float32' ? Math.fround(noData) : noData;
}
