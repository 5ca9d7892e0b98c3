import { getDecoder } from 'geotiff';
import { unpackLzw } from '../../src/io/decode/index.ts';
import { seededRandom } from '../../src/units/index.ts';
import { packLzw } from '../helpers/lzw-pack.ts';

const SIZE = 512 * 512 * 4;
const RUNS = 7;

/** One tile's worth of LZW, by this program's decoder and by the library's, on this thread. */
export async function benchLzw(print: (line: string) => void): Promise<void> {
  const random = seededRandom(8);
  // Differences of heights: three bytes in four are small, the last is noise.
  const bytes = Uint8Array.from({ length: SIZE }, (_, i) => (i % 4 < 3 ? random.next() * 3 : random.next() * 256));
  const packed = packLzw(bytes);
  const library = await getDecoder(5, {} as never);
  const own: number[] = [];
  const other: number[] = [];
  let sink = 0;
  for (let run = 0; run <= RUNS; run++) {
    let start = performance.now();
    sink += unpackLzw(packed, SIZE)[SIZE - 1];
    const ownMs = performance.now() - start;
    start = performance.now();
    const result = new Uint8Array((await library.decodeBlock(packed.slice().buffer as ArrayBuffer)) as ArrayBuffer);
    sink -= result[SIZE - 1];
    if (run === 0) continue;
    own.push(ownMs);
    other.push(performance.now() - start);
  }
  if (sink !== 0) throw new Error('The two decoders differ.');
  const [a, b] = [own, other].map((times) => ({ min: Math.min(...times), max: Math.max(...times) }));
  const text = ({ min, max }: { min: number; max: number }): string => `${min.toFixed(1)}–${max.toFixed(1)}`;
  print(`LZW, 1 MiB tile: own ${text(a)} ms, library ${text(b)} ms = ${(b.min / a.min).toFixed(1)} × as fast`);
}
