import { UserError } from '../../units/index.ts';

const CLEAR = 256;
const END = 257;
const FIRST_FREE = 258;
const TABLE_SIZE = 4096;
const SHORTEST_CODE = 9;
const LONGEST_CODE = 12;

/**
 * Unpacks TIFF LZW (TIFF 6.0 section 13: 9 to 12 bit codes, most significant bit first, grown one code early) into exactly
 * `size` bytes. Every table entry is a run that already stands in the output: the run before, and the byte behind it. So the
 * table holds places and lengths, not strings. It is used up to its 4096 entries, as writers that clear late need it.
 * Throws `UserError` where the codes end early or make no sense. [source: tiff6]
 */
export function unpackLzw(packed: Uint8Array, size: number): Uint8Array<ArrayBuffer> {
  const out = new Uint8Array(size);
  const from = new Int32Array(TABLE_SIZE);
  const length = new Int32Array(TABLE_SIZE);
  const end = packed.length;
  let at = 0;
  let bits = 0;
  let bitCount = 0;
  let width = SHORTEST_CODE;
  let mask = (1 << width) - 1;
  let next = FIRST_FREE;
  let written = 0;
  let lastFrom = 0;
  let lastLength = 0;

  while (written < size) {
    if (bitCount < width) {
      if (at + 1 < end) {
        bits = (bits << 16) | (packed[at] << 8) | packed[at + 1];
        at += 2;
        bitCount += 16;
      } else if (at < end && bitCount + 8 >= width) {
        bits = (bits << 8) | packed[at++];
        bitCount += 8;
      } else {
        throw endsEarly(written, size);
      }
    }
    bitCount -= width;
    const code = (bits >>> bitCount) & mask;

    if (code === CLEAR) {
      width = SHORTEST_CODE;
      mask = (1 << width) - 1;
      next = FIRST_FREE;
      lastLength = 0;
      continue;
    }
    // The new entry's last byte is the first of this code's run, which is written below: a code may name its own entry.
    if (lastLength !== 0 && next < TABLE_SIZE) {
      from[next] = lastFrom;
      length[next] = lastLength + 1;
      next++;
      if (next === mask && width < LONGEST_CODE) {
        width++;
        mask = (1 << width) - 1;
      }
    }
    lastFrom = written;
    if (code < CLEAR) {
      out[written++] = code;
      lastLength = 1;
      continue;
    }
    if (code === END) throw endsEarly(written, size);
    if (code >= next) throw broken('it holds an impossible LZW code');
    lastLength = length[code];
    let source = from[code];
    const stop = Math.min(size, written + lastLength);
    while (written < stop) out[written++] = out[source++];
  }
  return out;
}

const endsEarly = (written: number, size: number): UserError =>
  broken(`its LZW codes end after ${written} of ${size} bytes`);

const broken = (why: string): UserError =>
  new UserError('broken-block', `A block of the raster cannot be unpacked: ${why}; copy or download the file again.`);
