import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fromArrayBuffer } from 'geotiff';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeGeoTiff } from '../../src/io/node/index.ts';
import type { Grid } from '../../src/terrain/index.ts';
import { seededRandom } from '../../src/units/index.ts';

const folder = mkdtempSync(join(tmpdir(), 'brinkbook-tiff-'));
const path = join(folder, 'hill.tif');
const random = seededRandom(7);
// Sides that are no multiple of the tile, and a corner without data.
const grid: Grid = {
  width: 301,
  height: 217,
  data: Float32Array.from({ length: 301 * 217 }, (_, i) =>
    i % 301 < 9 && i < 301 * 5 ? Number.NaN : 640 + (i % 301) * 0.31 - Math.floor(i / 301) * 0.12 + random.normal(),
  ),
  x0: 578000.5,
  y0: 4873999.5,
  stepX: 1,
  stepY: 1,
};

const ask = (program: string, args: string[], input = '') =>
  spawnSync(program, args, { encoding: 'utf8', input }).stdout;
const gdal = Boolean(ask('gdalinfo', ['--version']));

beforeAll(async () => {
  if (!gdal) {
    if (process.env.CI === 'true') throw new Error('gdalinfo was not found, and CI must not skip its checks.');
    console.warn('gdalinfo was not found: the written raster is read back with geotiff only.');
  }
  await writeGeoTiff(path, grid, {
    epsg: 32609,
    verticalEpsg: 3855,
    noData: -9999,
    tileSize: 64,
    smallestOverview: 64,
    metadata: { VERTICAL_RMSE_M: '0.05', NOTE: 'a < b & "c"' },
    dateTime: '2023:06:18 12:00:00',
  });
});

afterAll(() => rmSync(folder, { recursive: true }));

describe('a written GeoTIFF', () => {
  it('leaves nothing but the whole file', () => {
    expect(readdirSync(folder)).toEqual(['hill.tif']);
  });

  it('gives geotiff the same samples, bit for bit', async () => {
    const bytes = readFileSync(path);
    const tiff = await fromArrayBuffer(
      bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length) as ArrayBuffer,
    );
    const image = await tiff.getImage();
    const [samples] = (await image.readRasters()) as unknown as Float32Array[];
    const expected = Float32Array.from(grid.data, (z) => (Number.isNaN(z) ? -9999 : z));
    expect(image.getWidth()).toBe(grid.width);
    expect(Buffer.from(samples.buffer).equals(Buffer.from(expected.buffer))).toBe(true);
    expect(image.getOrigin().slice(0, 2)).toEqual([578000, 4874000]);
    expect(image.getGDALNoData()).toBe(-9999);
    expect(image.getGeoKeys()).toMatchObject({ ProjectedCSTypeGeoKey: 32609, VerticalUnitsGeoKey: 9001 });
    expect(await tiff.getImageCount()).toBe(4);
    const half = await tiff.getImage(1);
    const [means] = (await half.readRasters()) as unknown as Float32Array[];
    const at = 40 * half.getWidth() + 50;
    const four = [0, 1, 301, 302].map((step) => grid.data[80 * 301 + 100 + step]);
    expect(means[at]).toBeCloseTo(four.reduce((a, b) => a + b) / 4, 4);
    // A mean over a part without data is of the cells that have it; none gives none.
    expect(means[0]).toBe(-9999);
    expect(means[4]).toBeCloseTo((grid.data[9] + grid.data[301 + 9]) / 2, 4);
  });

  it.skipIf(!gdal)('is what GDAL says it should be', () => {
    const info = JSON.parse(ask('gdalinfo', ['-json', path]));
    expect(info.size).toEqual([301, 217]);
    expect(info.geoTransform).toEqual([578000, 1, 0, 4874000, 0, -1]);
    expect(info.coordinateSystem.wkt).toContain('ID["EPSG",32609]');
    expect(info.coordinateSystem.wkt).toContain('ID["EPSG",3855]');
    expect(info.metadata['']).toMatchObject({
      VERTICAL_RMSE_M: '0.05',
      NOTE: 'a < b & "c"',
      AREA_OR_POINT: 'Area',
      TIFFTAG_DATETIME: '2023:06:18 12:00:00',
    });
    expect(info.metadata.IMAGE_STRUCTURE).toMatchObject({ COMPRESSION: 'DEFLATE', PREDICTOR: '3' });
    const [band] = info.bands;
    expect(band).toMatchObject({ type: 'Float32', block: [64, 64], noDataValue: -9999 });
    expect(band.overviews.map((o: { size: number[] }) => o.size)).toEqual([
      [151, 109],
      [76, 55],
      [38, 28],
    ]);
  });

  it.skipIf(!gdal)('gives GDAL the same heights', () => {
    const cells = [0, 150, 300].flatMap((c) => [10, 63, 64, 216].map((r) => [c, r]));
    const out = ask('gdallocationinfo', ['-valonly', path], cells.map(([c, r]) => `${c} ${r}`).join('\n'));
    const values = out.trim().split('\n').map(Number);
    expect(values).toHaveLength(cells.length);
    cells.forEach(([c, r], k) => {
      expect(values[k]).toBeCloseTo(grid.data[r * 301 + c], 4);
    });
  });
});
