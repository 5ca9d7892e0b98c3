import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { localPlane } from '../../src/geo/index.ts';
import { openCells, openElevation } from '../../src/io/index.ts';
import { fileSource, writeCut } from '../../src/io/node/index.ts';
import { root } from '../browser/app.ts';

const folder = mkdtempSync(join(tmpdir(), 'brinkbook-cut-'));
afterAll(() => rmSync(folder, { recursive: true }));

const demo = join(root, 'data/demo/elevation-1m.tif');
const places = [
  { lon: -128.01572, lat: 43.99982 },
  { lon: -128.00108, lat: 44.00493 },
];
const ask = (program: string, ...args: string[]): string => spawnSync(program, args, { encoding: 'utf8' }).stdout ?? '';

/** The demo's 1 m raster cut to two places, 150 m each way. */
async function cut(): Promise<string> {
  const path = join(folder, 'cut.tif');
  const cells = await openCells(fileSource(demo));
  await writeCut(
    path,
    cells,
    places.map((at) => cells.windowAround(at, 150)!),
  );
  await cells.close();
  return path;
}

test('the cut says the same of itself, has the same heights at the same places, and nothing elsewhere', async () => {
  const path = await cut();
  expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  const [from, to] = await Promise.all([openElevation(fileSource(demo)), openElevation(fileSource(path))]);
  const { source: _a, ...said } = from.info;
  const { source: _b, ...again } = to.info;
  expect(again).toEqual(said);
  for (const at of places) {
    const plane = localPlane(at);
    const [a, b] = await Promise.all(
      [from, to].map(async (one) => (await one.readLayer(plane, { x: 0, y: 0 }, 140))!.grid),
    );
    expect([b!.x0, b!.y0, b!.width, b!.height]).toEqual([a!.x0, a!.y0, a!.width, a!.height]);
    expect(b!.data).toEqual(a!.data);
  }
  const between = { lon: -128.0084, lat: 44.00237 };
  const hole = await to.readLayer(localPlane(between), { x: 0, y: 0 }, 20);
  expect(hole!.grid.data.every((height) => Number.isNaN(height))).toBe(true);
  await Promise.all([from.close(), to.close()]);
});

test.skipIf(!ask('gdalinfo', '--version')).each([
  ['degrees', ['-t_srs', 'EPSG:4269+5703'], []],
  ['US survey feet', ['-t_srs', 'EPSG:6557', '-tr', '30', '30'], []],
  ['a system of its own', ['-t_srs', '+proj=tmerc +lat_0=43.9 +lon_0=-128.1 +k=1 +x_0=1000 +ellps=GRS80 +units=m'], []],
  ['whole metres', [], ['-ot', 'Int16']],
  ['cells that are points', [], ['--config', 'GTIFF_POINT_GEO_IGNORE', 'NO', '-mo', 'AREA_OR_POINT=Point']],
])('a raster in %s is cut to the same', async (_name, warp, translate) => {
  const [from, warped, to] = ['made.tif', 'warped.tif', 'cut-made.tif'].map((name) => join(folder, name));
  const coarse = join(root, 'data/demo/elevation-10m.tif');
  if (warp.length > 0) spawnSync('gdalwarp', ['-q', '-overwrite', '-r', 'bilinear', ...warp, coarse, warped!]);
  const made = spawnSync('gdal_translate', ['-q', ...translate, warp.length > 0 ? warped! : coarse, from!]);
  expect(made.status).toBe(0);
  const options = { verticalUnit: 'm' } as const;
  const cells = await openCells(fileSource(from!), options);
  await writeCut(
    to!,
    cells,
    places.map((at) => cells.windowAround(at, 400)!),
  );
  await cells.close();
  const [a, b] = await Promise.all([from!, to!].map((path) => openElevation(fileSource(path), options)));
  const { source: _a, cellM, ...said } = a!.info;
  const { source: _b, cellM: again, ...saidAgain } = b!.info;
  expect(saidAgain).toEqual(said);
  expect(again).toBeCloseTo(cellM, 2);
  for (const at of places) {
    const plane = localPlane(at);
    const [one, other] = await Promise.all([a, b].map((raster) => raster!.readLayer(plane, { x: 0, y: 0 }, 350)));
    expect(other!.grid.width).toBe(one!.grid.width);
    expect(other!.grid.x0).toBeCloseTo(one!.grid.x0, 8);
    expect(other!.grid.y0).toBeCloseTo(one!.grid.y0, 8);
    // The file's own numbers, in single precision where it has finer ones.
    for (const [i, height] of one!.grid.data.entries()) {
      if (Number.isNaN(height)) expect(other!.grid.data[i]).toBeNaN();
      else expect(Math.abs(other!.grid.data[i]! - height)).toBeLessThan(2e-4);
    }
  }
  await Promise.all([a!.close(), b!.close()]);
});

test.skipIf(!ask('gdalinfo', '--version'))('GDAL reads it: cloud-optimised layout, the same heights', async () => {
  const path = await cut();
  const info = JSON.parse(ask('gdalinfo', '-json', path));
  const [band] = info.bands;
  expect([band.block, band.type, band.noDataValue]).toEqual([[256, 256], 'Float32', -9999]);
  expect(band.overviews.length).toBeGreaterThan(1);
  expect(info.metadata['']).toMatchObject({
    TERRAIN_KIND: 'bare earth',
    VERTICAL_RMSE_M: '0.05',
    AREA_OR_POINT: 'Area',
  });
  expect(info.coordinateSystem.wkt).toContain('ID["EPSG",32609]');
  for (const { lon, lat } of places) {
    const at = ['-valonly', '-wgs84'];
    const [a, b] = [demo, path].map((file) => Number(ask('gdallocationinfo', ...at, file, `${lon}`, `${lat}`)));
    expect(a).toBeGreaterThan(0);
    expect(b).toBe(a);
  }
});
