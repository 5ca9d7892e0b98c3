import { TILE_SIZE } from './tile-box.ts';

/**
 * A ground tile as colours: red · 256 + green + blue / 256 − 32768 metres [source: terrarium], RGBA bytes, opaque. Pixels without
 * ground take the height of the nearest one that has it along their row, else column, so that shading makes no cliff there.
 */
export function terrarium(heights: Float32Array): Uint8ClampedArray<ArrayBuffer> {
  const filled = heights.slice();
  const n = TILE_SIZE;
  for (let y = 0; y < n; y++) spread(filled, y * n, 1, n);
  for (let x = 0; x < n; x++) spread(filled, x, n, n);
  const bytes = new Uint8ClampedArray(filled.length * 4);
  for (let i = 0; i < filled.length; i++) {
    const value = Number.isNaN(filled[i]!) ? 32768 : filled[i]! + 32768;
    const whole = Math.floor(value);
    bytes[4 * i] = whole >> 8;
    bytes[4 * i + 1] = whole & 255;
    bytes[4 * i + 2] = Math.floor((value - whole) * 256);
    bytes[4 * i + 3] = 255;
  }
  return bytes;
}

/** Carries the last known value forward along a line, then backward over what stands before the first. */
function spread(values: Float32Array, first: number, step: number, count: number): void {
  const carry = (from: number, by: number): void => {
    let last = Number.NaN;
    for (let k = 0, at = from; k < count; k++, at += by) {
      if (Number.isNaN(values[at]!)) values[at] = last;
      else last = values[at]!;
    }
  };
  carry(first, step);
  carry(first + (count - 1) * step, -step);
}
