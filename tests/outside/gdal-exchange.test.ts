import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { writeCsv, writeGeoJson, writeGpx, writeKml } from '../../src/io/exchange/index.ts';
import { hasGdal, scratch } from '../helpers/gdal.ts';
import { hostileTexts, sampleBook } from '../helpers/sample-book.ts';

const whole = { sites: null, crashes: true };

interface Read {
  features: { properties: Record<string, unknown>; geometry: { type: string; coordinates: unknown } }[];
}

/** What GDAL's drivers read of the files that a book writes [source: gdal]. */
describe.skipIf(!hasGdal('what other programs read of an exported book'))('ogr2ogr', () => {
  const { path, remove } = scratch();
  afterAll(remove);
  const read = (name: string, content: string, ...args: string[]): Read => {
    writeFileSync(path(name), content);
    return JSON.parse(
      execFileSync('ogr2ogr', ['-f', 'GeoJSON', '/vsistdout/', path(name), ...args], {
        encoding: 'utf8',
        stdio: ['ignore', 'pipe', 'pipe'],
      }),
    );
  };
  const points = ({ features }: Read) =>
    features
      .filter(({ geometry }) => geometry?.type === 'Point')
      .map(({ geometry }) => (geometry.coordinates as number[]).slice(0, 2));

  it.each(['a note', ...hostileTexts].map((text) => [JSON.stringify(text), text]))(
    'reads all formats with %s in them',
    (_shown, text) => {
      const book = sampleBook(text);
      const own = JSON.parse(writeGeoJson(book, whole)) as Read;
      const json = read('book.geojson', writeGeoJson(book, whole));
      expect(json.features.length).toBe(own.features.length);
      expect(json.features[0]!.geometry.coordinates).toEqual([-128.01, 44.001]);
      const gpx = read('book.gpx', writeGpx(book, whole), 'waypoints');
      // Every point, and the patient point of one site.
      expect(gpx.features.length).toBe(points(own).length + 1);
      expect(points(gpx)).toContainEqual([-128.0102, 44.0004]);
      expect(read('book.gpx', writeGpx(book, whole), 'tracks').features).toHaveLength(3);
      const kml = read('book.kml', writeKml(book, whole), 'Sites');
      expect(kml.features).toHaveLength(3);
      expect(points(kml)[0]).toEqual([-128.01, 44.001]);
      const csv = read('book.csv', writeCsv(book, whole), '-oo', 'X_POSSIBLE_NAMES=lon', '-oo', 'Y_POSSIBLE_NAMES=lat');
      expect(csv.features.length).toBe(own.features.length);
      expect(points(csv)[0]).toEqual([-128.01, 44.001]);
    },
  );
});
