import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { type ImageType, takePhoto } from '../../src/io/photos/index.ts';
import { hasGdal, scratch } from '../helpers/gdal.ts';

/** Photos that GDAL writes with a place in them, and what GDAL reads of them afterwards [source: gdal]. */
describe.skipIf(!hasGdal('photos of another program'))('photos written by gdal_translate', () => {
  const { path, remove } = scratch();
  afterAll(remove);
  const info = (name: string, ...args: string[]): string =>
    execFileSync('gdalinfo', [...args, path(name)], { encoding: 'utf8' });
  const place = [
    ['EXIF_GPSLatitude', '(44) (0) (44.28)'],
    ['EXIF_GPSLatitudeRef', 'N'],
    ['EXIF_GPSLongitude', '(128) (2) (44.16)'],
    ['EXIF_GPSLongitudeRef', 'W'],
    ['EXIF_DateTimeOriginal', '2026:05:03 12:34:56'],
    ['EXIF_Make', 'SECRET-PLACE'],
  ].flatMap(([name, value]) => ['-mo', `${name}=${value}`]);

  it.each<[string, ImageType, string, string[]]>([
    ['photo.jpg', 'image/jpeg', 'JPEG', []],
    ['progressive.jpg', 'image/jpeg', 'JPEG', ['-co', 'PROGRESSIVE=YES']],
    ['photo.png', 'image/png', 'PNG', ['-co', 'WRITE_METADATA_AS_TEXT=YES', '-co', 'COMMENT=SECRET-PLACE']],
  ])('%s: its place is read, and nothing but the picture is left', async (name, type, driver, options) => {
    execFileSync('gdal_create', [
      '-q',
      '-of',
      'GTiff',
      '-ot',
      'Byte',
      '-outsize',
      '64',
      '48',
      '-bands',
      '3',
      '-burn',
      '90',
      path('plain.tif'),
    ]);
    execFileSync('gdal_translate', ['-q', '-of', driver, ...place, ...options, path('plain.tif'), path(name)], {
      stdio: 'pipe',
    });
    const written = new Uint8Array(readFileSync(path(name)));
    expect(Buffer.from(written).toString('latin1')).toContain('SECRET-PLACE');
    const taken = await takePhoto(written, name, null);
    expect(taken.fields).toMatchObject({ type, widthPx: 64, heightPx: 48 });
    if (type === 'image/jpeg') {
      expect(info(name)).toContain('EXIF_GPSLatitude');
      expect(taken.at!.lat).toBeCloseTo(44.0123, 6);
      expect(taken.at!.lon).toBeCloseTo(-128.0456, 6);
      expect(taken.fields.takenOn).toBe('2026-05-03');
    }
    writeFileSync(path(`plain-${name}`), taken.bytes);
    const after = info(`plain-${name}`, '-checksum');
    expect(after).not.toMatch(/EXIF_GPS|EXIF_Make|SECRET|COMMENT/);
    const sums = (out: string): string[] => [...out.matchAll(/Checksum=(\d+)/g)].map(([, sum]) => sum!);
    expect(sums(after)).toHaveLength(3);
    expect(sums(after)).toEqual(sums(info(name, '-checksum')));
  });
});
