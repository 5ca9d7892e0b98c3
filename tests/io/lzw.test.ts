import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unpackLzw } from '../../src/io/decode/index.ts';
import { seededRandom, UserError } from '../../src/units/index.ts';
import { packLzw } from '../helpers/lzw-pack.ts';

/** Bytes with enough repetition to make long table entries, and enough of them to fill the table several times. */
function texture(length: number, seed: number): Uint8Array {
  const random = seededRandom(seed);
  const bytes = new Uint8Array(length);
  for (let i = 0; i < length; i++) {
    bytes[i] = i > 40 && random.next() < 0.8 ? bytes[i - 1 - Math.floor(random.next() * 3)] : random.next() * 256;
  }
  return bytes;
}

describe('LZW', () => {
  it('unpacks the example of TIFF 6.0, section 13', () => {
    // [source: tiff6] The text 7 7 7 8 8 7 7 6 6 becomes the codes 256 7 258 8 8 258 6 6 257 (checked by hand).
    const codes = [256, 7, 258, 8, 8, 258, 6, 6, 257];
    const bits = codes.map((code) => code.toString(2).padStart(9, '0')).join('');
    const packed = Uint8Array.from(bits.padEnd(Math.ceil(bits.length / 8) * 8, '0').match(/.{8}/g)!, (b) =>
      Number.parseInt(b, 2),
    );
    expect([...unpackLzw(packed, 9)]).toEqual([7, 7, 7, 8, 8, 7, 7, 6, 6]);
  });

  it('gives back what was packed, whatever the bytes', () => {
    const bytes = fc.uint8Array({ maxLength: 3000 });
    fc.assert(
      fc.property(bytes, fc.constantFrom(4093, 4094, 4096), fc.boolean(), (text, clearAt, endCode) => {
        expect(unpackLzw(packLzw(text, { clearAt, endCode }), text.length)).toEqual(text);
      }),
      { seed: 5, numRuns: 200 },
    );
  });

  it.each([
    ['clears as most writers do', 4094],
    ['clears one entry early', 4093],
    ['fills the table to its 4096 entries', 4096],
    ['never clears', Number.POSITIVE_INFINITY],
  ])('reads a writer that %s', (_, clearAt) => {
    const text = texture(120_000, 11);
    const packed = packLzw(text, { clearAt });
    expect(packed.length).toBeLessThan(text.length);
    expect(Buffer.compare(unpackLzw(packed, text.length), text)).toBe(0);
  });

  it('reads long runs of one byte, whose every code is the entry about to be made', () => {
    const text = new Uint8Array(50_000).fill(7);
    expect(Buffer.compare(unpackLzw(packLzw(text), text.length), text)).toBe(0);
  });

  it('refuses a stream that ends early, with or without an end code, and says where', () => {
    const text = texture(5000, 3);
    const packed = packLzw(text);
    for (const cut of [1, 2, 10, Math.floor(packed.length / 2), packed.length - 2]) {
      expect(() => unpackLzw(packed.subarray(0, cut), text.length)).toThrow(/codes end after \d+ of 5000 bytes/);
    }
    expect(() => unpackLzw(packed, text.length + 1)).toThrow(/codes end after 5000 of 5001 bytes/);
    expect(() => unpackLzw(new Uint8Array(0), 1)).toThrow(UserError);
  });

  it('refuses a code that the table cannot hold yet', () => {
    // 256, then 300 before any entry exists: nine bits each.
    const bits = '100000000100101100'.padEnd(24, '0');
    const packed = Uint8Array.from(bits.match(/.{8}/g)!, (b) => Number.parseInt(b, 2));
    expect(() => unpackLzw(packed, 10)).toThrow(/impossible LZW code/);
  });

  it('never hangs or reads past its bytes on noise', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), (noise) => {
        try {
          unpackLzw(noise, 1000);
        } catch (error) {
          expect(error).toBeInstanceOf(UserError);
        }
      }),
      { seed: 9, numRuns: 500 },
    );
  });
});
