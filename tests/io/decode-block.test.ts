import { deflateSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BlockFormat, decodeBlock, undoFloatPrediction } from '../../src/io/decode/index.ts';
import { UserError } from '../../src/units/index.ts';

const plain: BlockFormat = {
  compression: 1,
  predictor: 1,
  sample: 'float32',
  littleEndian: true,
  width: 4,
  height: 2,
  lercPacking: 0,
  noData: null,
  scale: 1,
  offset: 0,
};

const buffer = (numbers: Float32Array | Float64Array | Int16Array | Uint16Array): ArrayBuffer =>
  numbers.slice().buffer as ArrayBuffer;

describe('one block', () => {
  it('keeps floats as they are and marks missing ground', async () => {
    const stored = Float32Array.of(1.5, -9999, Number.NaN, 812.25, 3.4e38, 0, -430, Number.POSITIVE_INFINITY);
    const heights = await decodeBlock({ ...plain, noData: -9999 }, buffer(stored));
    expect([...heights]).toEqual([1.5, Number.NaN, Number.NaN, 812.25, Number.NaN, 0, -430, Number.NaN]);
    expect(heights).toBeInstanceOf(Float32Array);
  });

  it('compares no-data as the file holds it: rounded to single precision', async () => {
    const stored = new Float32Array(8).fill(12);
    stored[3] = 700.1;
    const heights = await decodeBlock({ ...plain, noData: 700.1 }, buffer(stored));
    expect(heights[3]).toBeNaN();
    expect(heights[2]).toBe(12);
  });

  it.each([-9999, 32767, -32768, -999999, 1e20])(
    'takes an undeclared %d for missing, not for ground',
    async (value) => {
      const stored = new Float64Array(8).fill(300);
      stored[5] = value;
      const heights = await decodeBlock({ ...plain, sample: 'float64' }, buffer(stored));
      expect(heights[5]).toBeNaN();
      expect(heights[4]).toBe(300);
    },
  );

  it('scales stored numbers, compares no-data before it does', async () => {
    const stored = Int16Array.of(1000, 2000, -32768, 0, -150, 1, 2, 3);
    const format = { ...plain, sample: 'int16', noData: 0, scale: 0.1, offset: 100 } as const;
    const heights = await decodeBlock(format, buffer(stored));
    expect(heights[0]).toBeCloseTo(200, 4);
    expect(heights[2]).toBeNaN();
    expect(heights[3]).toBeNaN();
    expect(heights[4]).toBeCloseTo(85, 4);
  });

  it('reads unsigned numbers past the signed range', async () => {
    const stored = Uint16Array.of(40_000, 65_535, 1, 2, 3, 4, 5, 6);
    const heights = await decodeBlock({ ...plain, sample: 'uint16', scale: 0.1, noData: 65535 }, buffer(stored));
    expect(heights[0]).toBeCloseTo(4000, 3);
    expect(heights[1]).toBeNaN();
  });

  it('keeps doubles that single precision would round', async () => {
    const stored = new Float64Array(8).fill(1234.000_012_3);
    const heights = await decodeBlock({ ...plain, sample: 'float64' }, buffer(stored));
    expect(heights[0]).toBe(1234.000_012_3);
  });

  it('gives a clear sentence for a block that is cut off or broken', async () => {
    const packed = deflateSync(new Uint8Array(32).fill(3));
    const cut = new Uint8Array(packed.subarray(0, packed.length - 6)).buffer;
    await expect(decodeBlock({ ...plain, compression: 8 }, cut)).rejects.toThrow(UserError);
    await expect(decodeBlock({ ...plain, compression: 8 }, cut)).rejects.toThrow(/copy or download the file again/);
    await expect(decodeBlock(plain, new ArrayBuffer(16))).rejects.toThrow(/holds 16 bytes where 32 were expected/);
  });
});

/** Predictor 3 forward, from the definition of the technical note, one byte at a time. [source: tiff-tn3] */
function predict(numbers: Uint8Array, width: number, size: number): Uint8Array {
  const out = new Uint8Array(numbers.length);
  for (let row = 0; row < numbers.length; row += width * size) {
    const gathered: number[] = [];
    for (let plane = size - 1; plane >= 0; plane--) {
      for (let i = 0; i < width; i++) gathered.push(numbers[row + i * size + plane]);
    }
    gathered.forEach((byte, i) => {
      out[row + i] = byte - (i ? gathered[i - 1] : 0);
    });
  }
  return out;
}

describe('the floating-point predictor', () => {
  it.each([4, 8])('is undone for numbers of %d bytes', (size) => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 9 }),
        fc.integer({ min: 1, max: 4 }),
        fc.infiniteStream(fc.nat(255)),
        (width, rows, stream) => {
          const bytes = Uint8Array.from({ length: width * rows * size }, () => stream.next().value!);
          expect(undoFloatPrediction(predict(bytes, width, size), width, size)).toEqual(bytes);
        },
      ),
      { seed: 2, numRuns: 60 },
    );
  });
});
