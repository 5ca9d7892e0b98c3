import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { openElevation } from '../../src/io/elevation/index.ts';
import { fileSource } from '../../src/io/node/index.ts';
import { seededRandom } from '../../src/units/index.ts';
import { gdalInfo, gdalValues, hasGdal, scratch, translate } from '../helpers/gdal.ts';
import { makeTiff, somewhere } from '../helpers/make-tiff.ts';
import { readPlainTiff } from '../helpers/read-plain-tiff.ts';

// [source: gdal] Every encoding that GDAL writes of one raster must read here as GDAL reads it.
const gdal = hasGdal('decoding against GDAL');
const folder = scratch();
afterAll(() => folder.remove());

const WIDTH = 301;
const HEIGHT = 203;
const random = seededRandom(21);
const ground = Float32Array.from({ length: WIDTH * HEIGHT }, (_, i) =>
  i % 97 === 0 || (i % WIDTH > 60 && i % WIDTH < 90 && i > 9000 && i < 15_000)
    ? -9999
    : 900 + 80 * Math.sin((i % WIDTH) / 30) + Math.floor(i / WIDTH) * 0.7 + random.normal(),
);

interface Base {
  readonly name: string;
  readonly heights: ArrayLike<number>;
  readonly sample: 'float32' | 'float64' | 'int16' | 'uint16' | 'int32' | 'uint8';
  readonly noData: string;
}
const rounded = ground.map(Math.round);
const bases: Base[] = [
  { name: 'float32', heights: ground, sample: 'float32', noData: '-9999' },
  { name: 'float32-nan', heights: ground.map((z) => (z === -9999 ? Number.NaN : z)), sample: 'float32', noData: 'nan' },
  {
    name: 'float64',
    heights: Float64Array.from(ground, (z) => (z === -9999 ? z : z + 1e-9)),
    sample: 'float64',
    noData: '-9999',
  },
  { name: 'int16', heights: rounded, sample: 'int16', noData: '-9999' },
  { name: 'uint16', heights: rounded.map((z) => (z < 0 ? 65535 : z)), sample: 'uint16', noData: '65535' },
  { name: 'int32', heights: rounded, sample: 'int32', noData: '-9999' },
  { name: 'uint8', heights: rounded.map((z) => (z < 0 ? 255 : z % 250)), sample: 'uint8', noData: '255' },
];

const packings = ['NONE', 'LZW', 'DEFLATE', 'ZSTD', 'PACKBITS', 'LERC', 'LERC_DEFLATE', 'LERC_ZSTD'];
const predicted = new Set(['LZW', 'DEFLATE', 'ZSTD']);
const tiles = ['TILED=YES', 'BLOCKXSIZE=64', 'BLOCKYSIZE=64'];

/** Creation options: every packing with every predictor in tiles; byte orders and strips for a part of them. */
function variants(sample: Base['sample'], strips: boolean): string[][] {
  const list: string[][] = [];
  const float = sample.startsWith('float');
  for (const packing of sample === 'int32' || sample === 'uint8' ? ['LZW', 'LERC_DEFLATE'] : packings) {
    const predictors = predicted.has(packing) ? [1, 2, ...(float ? [3] : [])] : [1];
    for (const predictor of predictors) {
      const packed = [`COMPRESS=${packing}`, ...(predictor > 1 ? [`PREDICTOR=${predictor}`] : [])];
      list.push([...packed, ...tiles]);
      if ((packing === 'NONE' || packing === 'LZW') && predictor < 3)
        list.push([...packed, ...tiles, 'ENDIANNESS=BIG']);
      if (strips && predictor !== 2) list.push(packed, [...packed, `BLOCKYSIZE=${HEIGHT}`]);
    }
  }
  return list;
}

/** Every number as this program reads it. */
async function ours(path: string): Promise<Float32Array | Float64Array> {
  const source = await openElevation(fileSource(path));
  try {
    return (await source.readForMap(source.bounds, 0))!.grid.data;
  } finally {
    await source.close();
  }
}

/** Number of cells that differ; NaN equals NaN. */
function differing(a: ArrayLike<number>, b: ArrayLike<number>): number {
  if (a.length !== b.length) return Number.POSITIVE_INFINITY;
  let count = 0;
  for (let i = 0; i < a.length; i++) if (!Object.is(a[i], b[i]) && a[i] !== b[i]) count++;
  return count;
}

describe.skipIf(!gdal)('blocks that GDAL packed', () => {
  it.each(bases)(
    '$name: every packing, predictor, layout and byte order',
    async ({ name, heights, sample, noData }) => {
      const base = folder.path(`${name}.tif`);
      writeFileSync(base, makeTiff({ width: WIDTH, height: HEIGHT, heights, sample, noData, ...somewhere }));
      const known = gdalValues(base, folder.path('raw'));
      const missing = Number(noData);
      const expected = known.map((z) => (z === missing || Number.isNaN(z) ? Number.NaN : z));
      expect(expected.filter(Number.isNaN).length).toBeGreaterThan(700);
      expect(differing(await ours(base), expected)).toBe(0);
      for (const options of variants(sample, name === 'float32')) {
        const path = folder.path('packed.tif');
        translate(base, path, ...options.flatMap((option) => ['-co', option]));
        const result = await ours(path).catch((error: unknown) => String(error));
        expect(typeof result === 'string' ? result : differing(result, expected), options.join(' ')).toBe(0);
      }
    },
    60_000,
  );

  it('the floating-point predictor under big end first: what GDAL reads, which here is not what it was given', async () => {
    const base = folder.path('order.tif');
    writeFileSync(base, makeTiff({ width: WIDTH, height: HEIGHT, heights: ground, ...somewhere }));
    const path = folder.path('packed.tif');
    translate(base, path, '-co', 'COMPRESS=LZW', '-co', 'PREDICTOR=3', '-co', 'ENDIANNESS=BIG');
    // GDAL 3.6.2 turns the bytes once too often when it writes such a file; both readers find the same in it.
    const known = gdalValues(path, folder.path('raw')).map((z) => (z >= -1000 && z <= 9000 ? z : Number.NaN));
    expect(differing(await ours(path), known)).toBe(0);
  });

  it('BigTIFF, cloud-optimised with overviews, and sparse', async () => {
    const base = folder.path('float32.tif');
    const expected = gdalValues(base, folder.path('raw')).map((z) => (z === -9999 ? Number.NaN : z));
    const path = folder.path('odd.tif');
    for (const options of [
      ['-co', 'BIGTIFF=YES', '-co', 'TILED=YES', '-co', 'COMPRESS=DEFLATE'],
      ['-of', 'COG', '-co', 'COMPRESS=DEFLATE', '-co', 'PREDICTOR=YES', '-co', 'BLOCKSIZE=128'],
      ['-of', 'COG', '-co', 'COMPRESS=LZW', '-co', 'BIGTIFF=YES'],
    ]) {
      translate(base, path, ...options);
      expect(differing(await ours(path), expected), options.join(' ')).toBe(0);
    }
    writeFileSync(
      base,
      makeTiff({
        width: WIDTH,
        height: HEIGHT,
        heights: ground.map((z, i) => (i % WIDTH < 128 ? -9999 : z)),
        noData: '-9999',
        ...somewhere,
      }),
    );
    translate(
      base,
      path,
      '-co',
      'SPARSE_OK=TRUE',
      '-co',
      'TILED=YES',
      '-co',
      'BLOCKXSIZE=128',
      '-co',
      'BLOCKYSIZE=128',
      '-co',
      'COMPRESS=LZW',
    );
    const sparse = await ours(path);
    expect(
      differing(
        sparse,
        gdalValues(path, folder.path('raw')).map((z) => (z === -9999 ? Number.NaN : z)),
      ),
    ).toBe(0);
    expect(sparse[0]).toBeNaN();
  });

  it('LERC with a limit of error stays within it', async () => {
    const base = folder.path('limit-base.tif');
    writeFileSync(base, makeTiff({ width: WIDTH, height: HEIGHT, heights: ground, noData: '-9999', ...somewhere }));
    const path = folder.path('limit.tif');
    translate(base, path, '-co', 'COMPRESS=LERC_DEFLATE', '-co', 'MAX_Z_ERROR=0.01');
    const known = gdalValues(path, folder.path('raw')).map((z) => (z === -9999 ? Number.NaN : z));
    const read = await ours(path);
    // Both decode the same blocks; the last bit of a single may fall differently.
    expect(
      Math.max(...read.map((z, i) => (Number.isNaN(z) && Number.isNaN(known[i]) ? 0 : Math.abs(z - known[i])))),
    ).toBeLessThan(1e-4);
  });
});

describe.skipIf(!gdal)('where GDAL puts the cells', () => {
  it.each([
    ['areas', { ...somewhere }],
    [
      'points',
      {
        ...somewhere,
        keys: [
          [1024, 1],
          [1025, 2],
          [3072, 32609],
        ],
      },
    ],
    ['a tie point inside', { ...somewhere, tie: [17, 23, 0, 580017, 4871977, 0] }],
    ['a matrix', { keys: somewhere.keys, matrix: [2, 0, 0, 580000, 0, -2, 0, 4872000, 0, 0, 0, 0, 0, 0, 0, 1] }],
    [
      'a matrix, south up',
      { keys: somewhere.keys, matrix: [2, 0, 0, 580000, 0, 2, 0, 4872000, 0, 0, 0, 0, 0, 0, 0, 1] },
    ],
  ] as const)('%s', async (_, place) => {
    const path = folder.path('placed.tif');
    writeFileSync(path, makeTiff({ width: WIDTH, height: HEIGHT, heights: ground, ...(place as typeof somewhere) }));
    const source = await openElevation(fileSource(path));
    const { grid } = (await source.readForMap(source.bounds, 0))!;
    await source.close();
    const [x, stepX, , y, , stepY] = gdalInfo(path).geoTransform;
    expect(grid.x0).toBeCloseTo(x + stepX / 2, 6);
    expect(grid.stepX).toBeCloseTo(stepX, 9);
    expect(grid.stepY).toBeCloseTo(Math.abs(stepY), 9);
    const north = stepY < 0 ? y + stepY / 2 : y + stepY * (HEIGHT - 0.5);
    expect(grid.y0).toBeCloseTo(north, 6);
  });

  it('with scale and offset: heights as GDAL unscales them', async () => {
    const base = folder.path('scaled-base.tif');
    writeFileSync(
      base,
      makeTiff({ width: WIDTH, height: HEIGHT, heights: rounded, sample: 'int16', noData: '-9999', ...somewhere }),
    );
    const path = folder.path('scaled.tif');
    translate(base, path, '-a_scale', '0.01', '-a_offset', '123.5');
    const expected = gdalValues(path, folder.path('raw'), '-unscale');
    const read = await ours(path);
    let largest = 0;
    rounded.forEach((z, i) => {
      if (z !== -9999) largest = Math.max(largest, Math.abs(read[i] - expected[i]));
      else expect(read[i]).toBeNaN();
    });
    // Single precision near 130 m.
    expect(largest).toBeLessThan(1e-5);
  });
});

const data = process.env.BRINKBOOK_OPEN_DATA ?? '../shared/data';
const encodings = join(data, 'quebec_road_1m_encodings');
const present = existsSync(encodings);
if (!present) console.warn(`${encodings} was not found: the six encodings of real ground are not compared.`);

describe.skipIf(!present)('six encodings of one crop of real ground', () => {
  const names = [
    '01_strip_none',
    '02_tiled128_deflate_pred3',
    '03_strip_lzw_pred2',
    '04_cog',
    '05_pixelispoint',
    '06_bigtiff',
  ];

  it.each(names)('%s holds what the plain one holds', async (name) => {
    // The plain one read by hand: uncompressed strips, little-endian singles.
    const plain = readPlainTiff(join(encodings, 'j5gr_01_strip_none.tif'));
    expect(plain.length).toBe(360 * 400);
    expect(differing(await ours(join(encodings, `j5gr_${name}.tif`)), plain)).toBe(0);
  });
});
