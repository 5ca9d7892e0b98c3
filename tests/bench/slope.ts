import { execFileSync } from 'node:child_process';
import { closeSync, openSync, writeFileSync, writeSync } from 'node:fs';
import { openElevation } from '../../src/io/elevation/index.ts';
import { fileSource, inflateNatively } from '../../src/io/node/index.ts';
import { rasterProduct, streamProduct } from '../../src/terrain/index.ts';
import { seededRandom } from '../../src/units/index.ts';
import { gdalValues, hasGdal, scratch, translate } from '../helpers/gdal.ts';
import { sideBySide, span } from './harness.ts';

const SIDE = 4096;
const RUNS = 5;
const PACKINGS = {
  'not packed': [],
  'deflate, predictor 3, tiles of 512': [
    'COMPRESS=DEFLATE',
    'PREDICTOR=3',
    'TILED=YES',
    'BLOCKXSIZE=512',
    'BLOCKYSIZE=512',
  ],
};
/** Rows that are written at once. */
const BAND = 256;

/**
 * Slope of one GeoTIFF to a file of float32 by `gdaldem slope` and by this program, each on one thread, reading and writing
 * included. The start of gdaldem's process is taken off; this program runs in the process of the benchmark.
 */
export async function benchSlope(print: (line: string) => void): Promise<void> {
  if (!hasGdal('slope speed')) return;
  const folder = scratch();
  inflateNatively();
  try {
    const raw = writeGround(folder.path('ground.raw'), SIDE);
    const tiny = writeGround(folder.path('tiny.raw'), 8);
    print(
      `Slope of ${SIDE} × ${SIDE} singles, Horn, one thread; milliseconds, least and most of ${RUNS} after a warm-up`,
    );
    for (const [name, options] of Object.entries(PACKINGS)) {
      const path = folder.path('ground.tif');
      const corner = ['500000', '4904096', '504096', '4900000'];
      translate(
        raw,
        path,
        '-a_srs',
        'EPSG:32609',
        '-a_ullr',
        ...corner,
        ...options.flatMap((option) => ['-co', option]),
      );
      const { whole, start, ours } = await sideBySide(RUNS, {
        whole: () => gdaldem(path, folder.path('theirs.img')),
        start: () => gdaldem(tiny, folder.path('tiny.img')),
        ours: () => slopeToFile(path, folder.path('ours.img')),
      });
      const gdal = { min: whole.min - start.min, max: whole.max - start.min };
      print(`${name.padEnd(36)} gdaldem ${span(gdal)}   own ${span(ours)} = ${(ours.min / gdal.min).toFixed(2)} ×`);
      check(folder.path('theirs.img'), folder.path('ours.img'), folder.path('values.raw'));
    }
    const data = groundOf(SIDE);
    const shape = { width: SIDE, height: SIDE, eastM: 1, northM: 1 };
    const { memory } = await sideBySide(RUNS, {
      memory: () => rasterProduct({ kind: 'slope' }, shape, data)[SIDE + 1],
    });
    print(
      `in memory, without reading and writing: ${span(memory)}, ${((memory.min * 1e6) / SIDE ** 2).toFixed(1)} ns a cell`,
    );
  } finally {
    folder.remove();
  }
}

function gdaldem(from: string, to: string): number {
  execFileSync('gdaldem', ['slope', '-q', '-of', 'ENVI', from, to], { env: { ...process.env, GDAL_NUM_THREADS: '1' } });
  return 1;
}

/** Reads the raster with the program's own reader on this thread and writes its slope, −9999 for no data, row by row. */
async function slopeToFile(from: string, to: string): Promise<number> {
  const source = await openElevation(fileSource(from));
  const { grid } = (await source.readForMap(source.bounds, 0))!;
  await source.close();
  const { width, height, data } = grid;
  const file = openSync(to, 'w');
  const band = new Float32Array(BAND * width);
  let sum = 0;
  await streamProduct(
    { kind: 'slope' },
    { width, height, eastM: grid.stepX, northM: grid.stepY },
    (row) => data.subarray(row * width, (row + 1) * width),
    (row, values) => {
      const at = (row % BAND) * width;
      for (let i = 0; i < width; i++) band[at + i] = Number.isNaN(values[i]) ? -9999 : values[i];
      sum += band[at + 1];
      if (row % BAND === BAND - 1 || row === height - 1) writeSync(file, band, 0, (at + width) * 4);
    },
  );
  closeSync(file);
  writeFileSync(`${to.replace('.img', '')}.hdr`, header(width));
  return sum;
}

/** Both wrote the same slopes, to the rounding of gdaldem's float32 sums. */
function check(theirs: string, ours: string, scratchFile: string): void {
  const a = gdalValues(theirs, scratchFile);
  const b = gdalValues(ours, scratchFile);
  let worst = 0;
  for (let k = 0; k < a.length; k++) worst = Math.max(worst, Math.abs(a[k] - b[k]));
  if (!(worst < 0.02)) throw new Error(`The slopes differ by ${worst}°.`);
}

const header = (side: number): string =>
  `ENVI\nsamples = ${side}\nlines = ${side}\nbands = 1\nheader offset = 0\ndata type = 4\ninterleave = bsq\nbyte order = 0\n`;

function writeGround(path: string, side: number): string {
  const data = groundOf(side);
  writeFileSync(path, new Uint8Array(data.buffer));
  writeFileSync(path.replace('.raw', '.hdr'), header(side));
  return path;
}

/** Long waves, short waves and a centimetre of noise, metres. */
function groundOf(side: number): Float32Array {
  const random = seededRandom(4);
  return Float32Array.from({ length: side * side }, (_, k) => {
    const [col, row] = [k % side, Math.floor(k / side)];
    return (
      900 + 120 * Math.sin(col / 310) * Math.cos(row / 270) + 2 * Math.sin(col / 11 + row / 17) + 0.01 * random.normal()
    );
  });
}
