/**
 * Undoes TIFF predictor 2, horizontal differencing of whole numbers of `sampleBytes` bytes, in place and in this machine's
 * byte order; floats are differenced as the whole numbers that share their bits. [source: tiff6, section 14]
 */
export function undoDifferences(bytes: Uint8Array, width: number, sampleBytes: number): void {
  if (sampleBytes === 1) accumulate(bytes, width);
  else if (sampleBytes === 2) accumulate(new Uint16Array(bytes.buffer, bytes.byteOffset, bytes.byteLength / 2), width);
  else if (sampleBytes === 4) accumulate(new Uint32Array(bytes.buffer, bytes.byteOffset, bytes.byteLength / 4), width);
  else accumulateWide(new Uint32Array(bytes.buffer, bytes.byteOffset, bytes.byteLength / 4), width);
}

function accumulate(cells: Uint8Array | Uint16Array | Uint32Array, width: number): void {
  for (let row = 0; row < cells.length; row += width) {
    let sum = cells[row];
    for (let i = row + 1; i < row + width; i++) {
      sum = (sum + cells[i]) | 0;
      cells[i] = sum;
    }
  }
}

/** 64-bit sums from pairs of 32-bit halves, the low half first. */
function accumulateWide(halves: Uint32Array, width: number): void {
  for (let row = 0; row < halves.length; row += 2 * width) {
    for (let i = row + 2; i < row + 2 * width; i += 2) {
      const low = halves[i] + halves[i - 2];
      halves[i] = low;
      halves[i + 1] = halves[i + 1] + halves[i - 1] + (low > 0xffffffff ? 1 : 0);
    }
  }
}

/**
 * Undoes TIFF predictor 3: a row holds the bytes of its floats gathered by weight, heaviest first, each byte as its
 * difference from the one before. Returns the floats' bytes in little-endian order, whatever the file's byte order.
 * [source: tiff-tn3]
 */
export function undoFloatPrediction(bytes: Uint8Array, width: number, sampleBytes: number): Uint8Array<ArrayBuffer> {
  const out = new Uint8Array(bytes.length);
  const rowBytes = width * sampleBytes;
  if (sampleBytes === 4) {
    const words = new Uint32Array(out.buffer);
    for (let row = 0, to = 0; row < bytes.length; row += rowBytes) {
      sumBytes(bytes, row, row + rowBytes);
      const second = row + width;
      const third = second + width;
      const fourth = third + width;
      for (let i = 0; i < width; i++) {
        words[to++] = (bytes[row + i] << 24) | (bytes[second + i] << 16) | (bytes[third + i] << 8) | bytes[fourth + i];
      }
    }
    return out;
  }
  for (let row = 0; row < bytes.length; row += rowBytes) {
    sumBytes(bytes, row, row + rowBytes);
    for (let plane = 0; plane < sampleBytes; plane++) {
      const from = row + (sampleBytes - 1 - plane) * width;
      for (let i = 0, to = row + plane; i < width; i++, to += sampleBytes) out[to] = bytes[from + i];
    }
  }
  return out;
}

function sumBytes(bytes: Uint8Array, from: number, to: number): void {
  let sum = 0;
  for (let i = from; i < to; i++) {
    sum = (sum + bytes[i]) & 255;
    bytes[i] = sum;
  }
}

/** Turns the byte order of every number round, in place. */
export function swapBytes(bytes: Uint8Array, sampleBytes: number): void {
  for (let at = 0; at + sampleBytes <= bytes.length; at += sampleBytes) {
    for (let low = at, high = at + sampleBytes - 1; low < high; low++, high--) {
      const byte = bytes[low];
      bytes[low] = bytes[high];
      bytes[high] = byte;
    }
  }
}
