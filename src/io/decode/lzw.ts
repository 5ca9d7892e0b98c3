import { UserError } from '../../units/index.ts';

const CLEAR = 256;
const END = 257;
const FIRST_FREE = 258;
const TABLE_SIZE = 4096;
const LONGEST_CODE = 12;

/**
 * Unpacks TIFF LZW (TIFF 6.0 section 13: 9 to 12 bit codes, most significant bit first, width grown one code early) into
 * exactly `size` bytes. A table entry is a run that already stands in the output, so the table holds places and lengths,
 * not strings. The table is used up to its 4096 entries, as writers that clear late need it. Throws `UserError` where the
 * codes end early or make no sense. [source: tiff6]
 */
export function unpackLzw(packed: Uint8Array, size: number): Uint8Array {
  const out = new Uint8Array(size);
  const from = new Int32Array(TABLE_SIZE);
  const length = new Int32Array(TABLE_SIZE);
  const end = packed.length;
  let at = 0;
  let bits = 0;
  let bitCount = 0;
  let width = 9;
  let next = FIRST_FREE;
  let written = 0;
  let lastFrom = 0;
  let lastLength = 0;

  while (written < size) {
    while (bitCount < width) {
      if (at === end) throw broken(`its LZW codes end after ${written} of ${size} bytes`);
      bits = (bits << 8) | packed[at++];
      bitCount += 8;
    }
    bitCount -= width;
    const code = (bits >>> bitCount) & ((1 << width) - 1);

    if (code === CLEAR) {
      width = 9;
      next = FIRST_FREE;
      lastLength = 0;
      continue;
    }
    if (code === END) throw broken(`its LZW codes end after ${written} of ${size} bytes`);

    const here = written;
    let runLength = 1;
    if (code < CLEAR) {
      out[written++] = code;
    } else {
      // The entry about to be made is the last run and its own first byte, which the copy below writes as it goes.
      const unseen = code >= next;
      if (unseen && (code > next || lastLength === 0 || next === TABLE_SIZE))
        throw broken('it holds an impossible LZW code');
      let source = unseen ? lastFrom : from[code];
      runLength = unseen ? lastLength + 1 : length[code];
      const stop = Math.min(size, written + runLength);
      while (written < stop) out[written++] = out[source++];
    }
    if (lastLength > 0 && next < TABLE_SIZE) {
      from[next] = lastFrom;
      length[next] = lastLength + 1;
      next++;
      if (next + 1 >= 1 << width && width < LONGEST_CODE) width++;
    }
    lastFrom = here;
    lastLength = runLength;
  }
  return out;
}

const broken = (why: string): UserError =>
  new UserError('broken-block', `A block of the raster cannot be unpacked: ${why}; copy or download the file again.`);
