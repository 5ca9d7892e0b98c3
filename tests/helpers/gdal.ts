import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** True where GDAL's programs are installed. Says so when they are not, and fails under CI. */
export function hasGdal(what: string): boolean {
  const found = spawnSync('gdalinfo', ['--version']).status === 0;
  if (!found) {
    if (process.env.CI === 'true') throw new Error('GDAL (gdal-bin) was not found, and CI must not skip its checks.');
    console.warn(`GDAL (gdal-bin) was not found: ${what} is not checked.`);
  }
  return found;
}

/** A folder of its own for one test file; `remove` it at the end. */
export function scratch(): { path(name: string): string; remove(): void } {
  const folder = mkdtempSync(join(tmpdir(), 'brinkbook-'));
  return { path: (name) => join(folder, name), remove: () => rmSync(folder, { recursive: true }) };
}

/** Runs gdal_translate from one file to another. */
export function translate(from: string, to: string, ...args: string[]): void {
  execFileSync('gdal_translate', ['-q', ...args, from, to], { stdio: ['ignore', 'ignore', 'pipe'] });
}

/** Every number of a raster as GDAL reads it, doubles, row-major; `raw` names a scratch file. */
export function gdalValues(path: string, raw: string, ...args: string[]): Float64Array {
  execFileSync('gdal_translate', ['-q', '-of', 'ENVI', '-ot', 'Float64', ...args, path, raw], {
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  return new Float64Array(new Uint8Array(readFileSync(raw)).buffer);
}

/** What gdalinfo says, as JSON. */
export function gdalInfo(path: string): { geoTransform: number[]; size: [number, number] } & Record<string, unknown> {
  return JSON.parse(execFileSync('gdalinfo', ['-json', path], { encoding: 'utf8' }));
}
