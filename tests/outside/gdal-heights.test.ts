import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { localPlane } from '../../src/geo/index.ts';
import { openElevation, readGround } from '../../src/io/elevation/index.ts';
import { fileSource } from '../../src/io/node/index.ts';
import type { ElevationOptions } from '../../src/io/ports.ts';
import { type Ground, heightAt } from '../../src/terrain/index.ts';
import { gdalInfo, gdalValues, hasGdal, scratch } from '../helpers/gdal.ts';
import { openData } from '../helpers/open-data.ts';

// Heights of open rasters, and of one of them warped into other systems, as the program samples them on a site's plane,
// against GDAL [source: gdal]: its own warp to longitude and latitude, bilinear and without its approximation, and its answer
// at cell centres. GDAL gives float32.
const gdal = hasGdal('heights against gdalwarp and gdallocationinfo');
const folder = scratch();
afterAll(() => folder.remove());

const quebec = gdal ? openData('quebec_road_1m') : null;

/** Raster, longitude, latitude, cell in metres, largest difference of heights in metres. */
interface Case {
  readonly name: string;
  readonly path: () => string;
  readonly at: readonly [lon: number, lat: number];
  readonly cellM: number;
  readonly toleranceM: number;
  readonly options?: ElevationOptions;
}

const road = [-67.6104, 49.6401] as const;
const warped = (code: string, cell: string, toleranceM: number, options?: ElevationOptions): Case => ({
  name: `quebec_road_1m in ${code}`,
  path() {
    const path = folder.path(`${code.replace(':', '')}.tif`);
    const box = ['-te_srs', 'EPSG:4326', '-te', '-67.6125', '49.639', '-67.6083', '49.6412'];
    const args = ['-q', '-overwrite', '-t_srs', code, '-tr', cell, cell, '-r', 'cubic', ...box];
    execFileSync('gdalwarp', [...args, join(quebec!, 'j5gr_dtm.tif'), path]);
    return path;
  },
  at: road,
  cellM: 1,
  toleranceM,
  ...(options ? { options } : {}),
});

function ofData(name: string, file: string, rest: Omit<Case, 'name' | 'path'>): Case[] {
  const place = gdal ? openData(name) : null;
  return place ? [{ name, path: () => join(place, file), ...rest }] : [];
}

/** The demo's ground is there on every machine. */
const demo = (file: string, cellM: number): Case[] => {
  const path = join('data/demo', file);
  return gdal && existsSync(path)
    ? [{ name: `demo ${file}`, path: () => path, at: [-128, 44], cellM, toleranceM: 0.002 }]
    : [];
};

const cases: Case[] = [
  ...demo('elevation-1m.tif', 1),
  ...demo('elevation-10m.tif', 10),
  ...ofData('quebec_road_1m', 'j5gr_dtm.tif', { at: road, cellM: 1, toleranceM: 0.002 }),
  ...ofData('alps_5m', 'avaAlr_avaAlr.tif', { at: [11.4315, 47.3005], cellM: 5, toleranceM: 0.002 }),
  ...ofData('bigtujunga_30m', 'srtm_bigtujunga30m_utm11.tif', { at: [-118.15, 34.33], cellM: 30, toleranceM: 0.002 }),
  ...ofData('andorra_osm_srtm', 'derived_andorra_srtm3_point.tif', { at: [1.6, 42.55], cellM: 60, toleranceM: 0.005 }),
  ...ofData('city_2m_cog', 'dtm.tif', { at: [-77.0526, 38.8106], cellM: 2, toleranceM: 0.002 }),
  ...(quebec
    ? [
        warped('EPSG:32619', '1', 0.002),
        warped('EPSG:5070', '1', 0.002),
        warped('EPSG:4269', '0.00001', 0.002),
        warped('EPSG:3857', '1.5', 0.002),
        warped('EPSG:26847', '3', 0.002, { verticalUnit: 'm' }),
      ]
    : []),
];

async function groundOf(
  path: string,
  [lon, lat]: Case['at'],
  halfM: number,
  options?: ElevationOptions,
): Promise<Ground> {
  const source = await openElevation(fileSource(path), options);
  try {
    return await readGround([source], localPlane({ lon, lat }), { x: 0, y: 0 }, halfM);
  } finally {
    await source.close();
  }
}

describe.skipIf(cases.length === 0)('GDAL', () => {
  it.each(cases)('$name: bilinear heights', async ({ name, path, at, cellM, toleranceM, options }) => {
    const file = path();
    const ground = await groundOf(file, at, 60 * cellM, options);
    const [lon, lat] = at;
    // 80 × 80 places 0.6 of a cell apart, so that GDAL does not widen its kernel.
    const step = (0.6 * cellM) / 111_320;
    const wide = step / Math.cos((lat * Math.PI) / 180);
    const box = [lon - 40 * wide, lat - 40 * step, lon + 40 * wide, lat + 40 * step].map(String);
    const target = folder.path('warped.tif');
    const args = ['-t_srs', 'EPSG:4326', '-te', ...box, '-ts', '80', '80', '-r', 'bilinear', '-et', '0'];
    execFileSync('gdalwarp', ['-q', '-overwrite', ...args, '-ot', 'Float64', '-dstnodata', 'nan', file, target]);
    const theirs = gdalValues(target, folder.path('warped.raw'));
    let worst = 0;
    let compared = 0;
    for (let k = 0; k < theirs.length; k++) {
      const place = { lon: lon + ((k % 80) - 39.5) * wide, lat: lat + (39.5 - Math.floor(k / 80)) * step };
      const { x, y } = ground.plane.toLocal(place);
      const ours = heightAt(ground, x, y);
      if (Number.isNaN(ours)) continue;
      worst = Math.max(worst, Math.abs(ours - theirs[k]));
      compared++;
    }
    console.log(`${name}: ${compared} heights, largest difference ${(worst * 1000).toFixed(2)} mm`);
    expect(compared).toBeGreaterThan(5000);
    expect(worst).toBeLessThan(toleranceM);
  });

  it.each(cases.filter(({ name }) => !name.includes(' in ')))(
    '$name: heights of cells at their centres',
    async ({ name, path, at, cellM, toleranceM, options }) => {
      const file = path();
      const ground = await groundOf(file, at, 60 * cellM, options);
      const [west, stepX, , north, , down] = gdalInfo(file).geoTransform;
      const [layer] = ground.layers;
      const { grid } = layer;
      // Every seventh cell of the window, by its row and column in the file.
      const left = Math.round((grid.x0 - west) / stepX - 0.5);
      const top = Math.round((grid.y0 - north) / down - 0.5);
      const cells: [number, number][] = [];
      for (let r = 3; r < grid.height; r += 7) for (let c = 3; c < grid.width; c += 7) cells.push([left + c, top + r]);
      const input = cells.map(([c, r]) => `${c} ${r}\n`).join('');
      const answers = execFileSync('gdallocationinfo', ['-valonly', file], { input, encoding: 'utf8' }).split('\n');
      const places = cells.map(([c, r]) => `${west + (c + 0.5) * stepX} ${north + (r + 0.5) * down}\n`).join('');
      const degrees = execFileSync('gdaltransform', ['-s_srs', srsOf(file), '-t_srs', 'EPSG:4326', '-output_xy'], {
        input: places,
        encoding: 'utf8',
      }).split('\n');
      let worst = 0;
      let compared = 0;
      cells.forEach((_, i) => {
        const [lon, lat] = degrees[i].split(' ').map(Number);
        const { x, y } = ground.plane.toLocal({ lon, lat });
        const ours = heightAt(ground, x, y);
        if (Number.isNaN(ours)) return;
        worst = Math.max(worst, Math.abs(ours - Number(answers[i])));
        compared++;
      });
      console.log(`${name}: ${compared} cells, largest difference ${(worst * 1000).toFixed(2)} mm`);
      expect(compared).toBeGreaterThan(100);
      expect(worst).toBeLessThan(toleranceM);
    },
  );
});

/** A system that gdaltransform takes: the file's own as WKT. */
function srsOf(file: string): string {
  return execFileSync('gdalsrsinfo', ['-o', 'wkt2', file], { encoding: 'utf8' }).trim();
}
