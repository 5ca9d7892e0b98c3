import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { decodeHere } from '../../src/io/decode/index.ts';
import { type DecodePool, openElevation } from '../../src/io/elevation/index.ts';
import { fileSource, inflateNatively } from '../../src/io/node/index.ts';
import { seededRandom } from '../../src/units/index.ts';
import { nodeDecodePool } from '../../src/workers/node/index.ts';
import { hasGdal, scratch, translate } from '../helpers/gdal.ts';

const SIDE = 4096;
const RUNS = 7;
const OPTIONS = {
  'deflate, predictor 3': ['COMPRESS=DEFLATE', 'PREDICTOR=3'],
  'LZW, predictor 3': ['COMPRESS=LZW', 'PREDICTOR=3'],
  'deflate, predictor 2': ['COMPRESS=DEFLATE', 'PREDICTOR=2'],
  'zstd, predictor 3': ['COMPRESS=ZSTD', 'PREDICTOR=3'],
  LERC: ['COMPRESS=LERC', 'MAX_Z_ERROR=0.01'],
} as const;

/** Ground that compresses about as lidar does: long waves, short waves, and a centimetre of noise. */
function ground(): Float32Array {
  const random = seededRandom(4);
  const out = new Float32Array(SIDE * SIDE);
  for (let row = 0, i = 0; row < SIDE; row++) {
    for (let col = 0; col < SIDE; col++, i++) {
      const waves = 120 * Math.sin(col / 310) * Math.cos(row / 270) + 2 * Math.sin(col / 11 + row / 17);
      out[i] = 900 + waves + 0.08 * Math.sin(col / 3.1) * Math.sin(row / 2.3) + 0.01 * random.normal();
    }
  }
  return out;
}

interface Times {
  readonly min: number;
  readonly max: number;
}

/** A raster of 4096 × 4096 singles in tiles of 512, unpacked whole by GDAL on one thread and by this program. */
export async function benchDecode(print: (line: string) => void): Promise<void> {
  if (!hasGdal('decoding speed')) return;
  const folder = scratch();
  const raw = folder.path('ground.raw');
  writeFileSync(raw, new Uint8Array(ground().buffer));
  writeFileSync(
    folder.path('ground.hdr'),
    `ENVI\nsamples = ${SIDE}\nlines = ${SIDE}\nbands = 1\nheader offset = 0\ndata type = 4\ninterleave = bsq\nbyte order = 0\n`,
  );
  const pool = nodeDecodePool(2);
  inflateNatively();
  let sink = 0;
  print(`Unpacking ${SIDE} × ${SIDE} singles, tiles of 512; milliseconds, least and most of ${RUNS} after a warm-up`);
  try {
    for (const [name, options] of Object.entries(OPTIONS)) {
      const path = folder.path('packed.tif');
      const creation = [...options, 'TILED=YES', 'BLOCKXSIZE=512', 'BLOCKYSIZE=512'];
      translate(
        raw,
        path,
        '-a_srs',
        'EPSG:32609',
        '-a_ullr',
        '500000',
        '4904096',
        '504096',
        '4900000',
        ...creation.flatMap((option) => ['-co', option]),
      );
      const times: Record<'gdal' | 'two' | 'one', number[]> = { gdal: [], two: [], one: [] };
      for (let run = 0; run <= RUNS; run++) {
        const gdal = gdalMs(path);
        const two = await ours(path, pool);
        const one = run < 3 ? await ours(path, decodeHere) : null;
        if (run === 0) continue;
        times.gdal.push(gdal);
        times.two.push(two.ms);
        if (one) times.one.push(one.ms);
        sink += two.sum;
      }
      const [gdal, two, one] = [times.gdal, times.two, times.one].map(spread);
      print(
        `${name.padEnd(22)} GDAL ${text(gdal)}  two workers ${text(two)} = ${(two.min / gdal.min).toFixed(2)} ×  own thread ${text(one)} = ${(one.min / gdal.min).toFixed(2)} ×`,
      );
    }
  } finally {
    await pool.close();
    folder.remove();
  }
  if (!Number.isFinite(sink)) throw new Error('The rasters held no ground.');
}

/** GDAL's time to read the raster into memory, its start taken off: a run over the whole less a run over one cell. */
function gdalMs(path: string): number {
  const run = (...window: string[]): number => {
    const start = performance.now();
    execFileSync('gdal_translate', ['-q', '-of', 'MEM', ...window, path, 'none'], {
      env: { ...process.env, GDAL_NUM_THREADS: '1' },
    });
    return performance.now() - start;
  };
  return run() - run('-srcwin', '0', '0', '1', '1');
}

async function ours(path: string, pool: DecodePool): Promise<{ ms: number; sum: number }> {
  const source = await openElevation(fileSource(path), {}, pool);
  const start = performance.now();
  const { data } = (await source.readForMap(source.bounds, 0))!.grid;
  const ms = performance.now() - start;
  await source.close();
  return { ms, sum: data[0] + data[data.length - 1] };
}

const spread = (times: number[]): Times => ({ min: Math.min(...times), max: Math.max(...times) });
const text = ({ min, max }: Times): string => `${min.toFixed(0)}–${max.toFixed(0)}`;
