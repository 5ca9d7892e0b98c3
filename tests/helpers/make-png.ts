import { crc32, deflateSync } from 'node:zlib';

/** A square PNG of one colour, red, green, blue. [source: png] */
export function makePng(side: number, [r, g, b]: readonly [number, number, number]): Uint8Array {
  const row = [0, ...Array.from({ length: side }, () => [r, g, b]).flat()];
  const pixels = Uint8Array.from(Array.from({ length: side }, () => row).flat());
  const size = new Uint8Array(13);
  const view = new DataView(size.buffer);
  view.setUint32(0, side);
  view.setUint32(4, side);
  size.set([8, 2, 0, 0, 0], 8);
  return Uint8Array.from([
    ...[137, 80, 78, 71, 13, 10, 26, 10],
    ...chunk('IHDR', size),
    ...chunk('IDAT', new Uint8Array(deflateSync(pixels))),
    ...chunk('IEND', new Uint8Array()),
  ]);
}

function chunk(name: string, data: Uint8Array): number[] {
  const named = Uint8Array.from([...new TextEncoder().encode(name), ...data]);
  const frame = new Uint8Array(8);
  const view = new DataView(frame.buffer);
  view.setUint32(0, data.length);
  view.setUint32(4, crc32(named));
  return [...frame.subarray(0, 4), ...named, ...frame.subarray(4)];
}
