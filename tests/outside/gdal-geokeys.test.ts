import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { localPlane } from '../../src/geo/index.ts';
import { openElevation, readGround } from '../../src/io/elevation/index.ts';
import { fileSource } from '../../src/io/node/index.ts';
import { heightAt } from '../../src/terrain/index.ts';
import { hasGdal, scratch, translate } from '../helpers/gdal.ts';

// Rasters in systems that GDAL writes as keys, by code and user-defined, opened here: a cell must be found where GDAL says
// that its centre lies [source: gdal; proj; geotiff11]. Heights are column + 100 · row, so that a height tells the cell.
const gdal = hasGdal('systems from keys');
const folder = scratch();
afterAll(() => folder.remove());
const SIDE = 41;

const systems: [name: string, srs: string, at: [number, number], step: number][] = [
  ['a code', 'EPSG:32611', [-118, 34], 10],
  ['a code in feet', 'EPSG:2232', [-105.2, 39.3], 30],
  ['a compound code', 'EPSG:26918+5703', [-75, 42], 10],
  ['a geographic code', 'EPSG:4269', [-105, 40], 1e-4],
  ['a geographic compound code', 'EPSG:5498', [-105, 40], 1e-4],
  [
    'own transverse Mercator',
    '+proj=tmerc +lat_0=12 +lon_0=7.7 +k=0.99991 +x_0=31000 +y_0=-4000 +ellps=GRS80 +units=m',
    [8, 46],
    10,
  ],
  [
    'own transverse Mercator in feet',
    '+proj=tmerc +lat_0=40 +lon_0=-100.3 +k=1.0002 +x_0=300000 +y_0=60000 +datum=NAD83 +units=us-ft',
    [-100, 41],
    30,
  ],
  [
    'own transverse Mercator in international feet',
    '+proj=tmerc +lat_0=40 +lon_0=-100.3 +k=1 +x_0=300000 +y_0=60000 +datum=WGS84 +units=ft',
    [-100, 41],
    30,
  ],
  [
    'own Lambert conic, two parallels',
    '+proj=lcc +lat_1=39.1 +lat_2=41.3 +lat_0=38.2 +lon_0=-101 +x_0=900000 +y_0=20000 +datum=NAD83 +units=us-ft',
    [-101, 40],
    30,
  ],
  [
    'own Lambert conic, one parallel',
    '+proj=lcc +lat_1=46.5 +lat_0=46.5 +lon_0=3 +k_0=0.9998 +x_0=600000 +y_0=200000 +ellps=GRS80',
    [4, 46],
    10,
  ],
  [
    'own Albers',
    '+proj=aea +lat_1=33.4 +lat_2=41.2 +lat_0=1 +lon_0=-119.5 +x_0=5 +y_0=-4000000 +datum=NAD83',
    [-120, 38],
    10,
  ],
  ['own Lambert equal area', '+proj=laea +lat_0=51 +lon_0=9 +x_0=1000 +y_0=2000 +ellps=GRS80', [10, 50], 10],
  ['own polar stereographic', '+proj=stere +lat_0=90 +lat_ts=70 +lon_0=-45 +x_0=0 +y_0=0 +datum=WGS84', [-50, 68], 10],
  [
    'own oblique stereographic',
    '+proj=sterea +lat_0=46 +lon_0=25 +k=0.99975 +x_0=500000 +y_0=500000 +ellps=GRS80',
    [24, 45.5],
    10,
  ],
  ['own Mercator', '+proj=merc +lon_0=10 +k=0.997 +x_0=0 +y_0=0 +datum=WGS84', [11, 44], 10],
  [
    'own shift',
    '+proj=tmerc +lat_0=49 +lon_0=-2 +k=0.9996012717 +x_0=400000 +y_0=-100000 +ellps=airy +towgs84=446.448,-125.157,542.06,0.15,0.247,0.842,-20.489',
    [-3, 54],
    10,
  ],
  [
    'own UTM zone on another ellipsoid',
    '+proj=utm +zone=33 +ellps=bessel +towgs84=577.326,90.129,463.919,5.137,1.474,5.297,2.4232',
    [14, 47],
    10,
  ],
  [
    'own geographic',
    '+proj=longlat +ellps=bessel +towgs84=577.326,90.129,463.919,5.137,1.474,5.297,2.4232',
    [14, 47],
    1e-4,
  ],
];

function transform(from: string, to: string, points: [number, number][]): [number, number][] {
  const input = points.map(([x, y]) => `${x} ${y}\n`).join('');
  return execFileSync('gdaltransform', ['-s_srs', from, '-t_srs', to, '-output_xy'], { input, encoding: 'utf8' })
    .trim()
    .split('\n')
    .map((line) => line.split(/\s+/).map(Number) as [number, number]);
}

function write(srs: string, [x, y]: [number, number], step: number): string {
  const raw = folder.path('cells.raw');
  const cells = Float32Array.from({ length: SIDE * SIDE }, (_, k) => (k % SIDE) + 100 * Math.floor(k / SIDE));
  writeFileSync(raw, new Uint8Array(cells.buffer));
  writeFileSync(
    folder.path('cells.hdr'),
    `ENVI\nsamples = ${SIDE}\nlines = ${SIDE}\nbands = 1\nheader offset = 0\ndata type = 4\ninterleave = bsq\nbyte order = 0\n`,
  );
  const half = (SIDE * step) / 2;
  const path = folder.path('keys.tif');
  const corners = [x - half, y + half, x + half, y - half].map(String);
  translate(raw, path, '-a_srs', srs, '-a_ullr', ...corners, '-co', 'COMPRESS=DEFLATE');
  return path;
}

describe.skipIf(!gdal)('systems from keys that GDAL wrote', () => {
  it.each(systems)('%s', async (_name, srs, at, step) => {
    const flat = srs.replace(/\+\d+$/, '');
    const [middle] = transform('EPSG:4326', flat, [at]);
    const path = write(srs, middle, step);
    const places: [number, number][] = [
      [0, 0],
      [-15, 12],
      [18, 3],
    ];
    const stated = execFileSync('gdalsrsinfo', ['-o', 'wkt2', path], { encoding: 'utf8' }).trim();
    const degrees = transform(
      stated,
      'EPSG:4326',
      places.map(([c, r]) => [middle[0] + c * step, middle[1] - r * step]),
    );
    const source = await openElevation(fileSource(path), { verticalUnit: 'm' });
    const ground = await readGround([source], localPlane({ lon: at[0], lat: at[1] }), { x: 0, y: 0 }, 400);
    await source.close();
    const half = (SIDE - 1) / 2;
    places.forEach(([c, r], i) => {
      const { x, y } = ground.plane.toLocal({ lon: degrees[i][0], lat: degrees[i][1] });
      // A hundredth of a cell across, 10 cm; a ten-thousandth down, 1 mm.
      expect(Math.abs(heightAt(ground, x, y) - (half + c + 100 * (half + r)))).toBeLessThan(0.01);
    });
  });

  it('names the system and its heights', async () => {
    const info = async (srs: string, at: [number, number], step: number) => {
      const [middle] = transform('EPSG:4326', srs.replace(/\+\d+$/, ''), [at]);
      const source = await openElevation(fileSource(write(srs, middle, step)));
      await source.close();
      return source.info;
    };
    expect(await info('EPSG:26918+5703', [-75, 42], 10)).toMatchObject({
      crs: 'EPSG:26918+5703',
      verticalUnit: 'm',
      verticalUnitAssumed: false,
      verticalDatum: 'NAVD88 height',
    });
    expect(await info('EPSG:2232+6360', [-105.2, 39.3], 30)).toMatchObject({
      crs: 'EPSG:2232+6360',
      verticalUnit: 'us-ft',
    });
    expect(await info('EPSG:2913+8228', [-120.5, 45], 30)).toMatchObject({
      verticalUnit: 'ft',
      verticalUnitAssumed: false,
    });
    expect(await info('EPSG:32611', [-118, 34], 10)).toMatchObject({ verticalUnit: 'm', verticalUnitAssumed: true });
  });
});
