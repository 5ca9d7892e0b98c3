import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { geodesicM } from '../../src/geo/index.ts';
import { seededRandom } from '../../src/units/index.ts';
import { hasProj } from '../helpers/proj.ts';

const degrees = (d: number, m: number, s: number): number => Math.sign(d) * (Math.abs(d) + m / 60 + s / 3600);

describe('lengths on the ellipsoid', () => {
  it('Flinders Peak to Buninyong is 54,972.271 m (GDA94 Technical Manual, recalled; GRS 80, which is WGS 84 to 0.1 mm)', () => {
    const flinders = { lat: degrees(-37, 57, 3.7203), lon: degrees(144, 25, 29.5244) };
    const buninyong = { lat: degrees(-37, 39, 10.1561), lon: degrees(143, 55, 35.3839) };
    expect(geodesicM(flinders, buninyong)).toBeCloseTo(54972.271, 2);
  });

  const geod = hasProj('geod', 'lengths on the ellipsoid');
  it.skipIf(!geod)(
    'agree with PROJ’s geod to 0.1 mm, from metres to a thousand kilometres [source: proj; karney2013]',
    () => {
      const random = seededRandom(31);
      const pairs = Array.from({ length: 200 }, (_, i) => {
        const reach = 10 ** (-5 + (i % 7));
        const lat = -70 + 140 * random.next();
        const lon = -180 + 360 * random.next();
        return [
          { lat, lon },
          { lat: lat + reach * (random.next() - 0.5), lon: lon + reach * (random.next() - 0.5) },
        ];
      });
      const input = pairs.map(([a, b]) => `${a.lat} ${a.lon} ${b.lat} ${b.lon}\n`).join('');
      const run = spawnSync('geod', ['+ellps=WGS84', '-I', '-F', '%.6f'], { input, encoding: 'utf8' });
      const lengths = run.stdout
        .trim()
        .split('\n')
        .map((line) => Number(line.split(/\s+/)[2]));
      expect(lengths.length).toBe(200);
      const worst = Math.max(...pairs.map(([a, b], i) => Math.abs(geodesicM(a, b) - lengths[i])));
      console.log(`geodesics against geod: largest difference ${worst.toExponential(1)} m`);
      expect(worst).toBeLessThan(1e-4);
    },
  );
});
