import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { formatUsng, geodesicM, parseUsng } from '../../src/geo/index.ts';
import { openData } from '../helpers/open-data.ts';

// Published positions with their references (read) [source: usng-positions; fgdc-usng].
const published = [
  [48.8582, 2.2945, '31U DQ 48251 11932'],
  [38.8895, -77.0352, '18S UJ 23486 06483'],
  [40.7128, -74.006, '18T WL 83959 07350'],
  [35.028056, -111.023333, '12S VD 97871 76154'],
  [38.897778, -77.036389, '18S UJ 23404 07404'],
] as const;

describe('US National Grid, published positions', () => {
  it.each(published)('%f, %f is %s', (lat, lon, text) => {
    expect(formatUsng({ lat, lon })).toBe(text);
    // A metre square: its middle is at most 0.71 m from any position in it.
    expect(geodesicM(parseUsng(text)!.position, { lat, lon })).toBeLessThan(0.72);
  });

  it('zones are wider off Norway and in Svalbard (read)', () => {
    expect(formatUsng({ lat: 75, lon: 10 })).toMatch(/^33X /);
    expect(formatUsng({ lat: 75, lon: 8 })).toMatch(/^31X /);
    expect(formatUsng({ lat: 60, lon: 5 })).toMatch(/^32V /);
  });
});

const data = openData('usng');
describe.skipIf(!data)('16,380 references over all zones [source: usng-test-data]', () => {
  it('lie within 1.7 m of their rounded positions, and come back', () => {
    const rows: { mgrs: string; latitude: number; longitude: number }[] = JSON.parse(
      readFileSync(join(data!, 'mgrs-test-data.json'), 'utf8'),
    );
    let worst = 0;
    let far = 0;
    for (const { mgrs, latitude: lat, longitude: lon } of rows) {
      const found = parseUsng(mgrs);
      expect(found, mgrs).not.toBeNull();
      const [west, north] = [found!.position.lon, found!.position.lat];
      worst = Math.max(worst, geodesicM({ lon: west, lat: north }, { lat, lon }));
      // Forward from the rounded position: the same square or the one beside it.
      const again = parseUsng(formatUsng({ lat, lon })!)!.position;
      far = Math.max(far, geodesicM(again, { lat, lon }));
    }
    console.log(
      `US National Grid: ${rows.length} references, largest distance ${worst.toFixed(2)} m, forward and back ${far.toFixed(2)} m`,
    );
    expect(rows.length).toBe(16_380);
    expect(worst).toBeLessThan(1.7);
    expect(far).toBeLessThan(0.72);
  });
});
