import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { crsOfText, geodesicM, loadEpsgTable } from '../../src/geo/index.ts';
import { hasGdal } from '../helpers/gdal.ts';
import { openData } from '../helpers/open-data.ts';
import { hasProj } from '../helpers/proj.ts';

// Positions against PROJ, through gdaltransform, in both directions at nine places about a middle [source: proj]. Systems that
// only project agree to a tenth of a millimetre. Where a datum is shifted by seven numbers, PROJ may take others, or a grid.
const PROJECTED_M = 1e-4;
const table = await loadEpsgTable();
const gdal = hasGdal('coordinates against PROJ');

const systems: [code: string, lon: number, lat: number, toleranceM: number, what: string][] = [
  ['EPSG:32609', -128, 44, PROJECTED_M, 'UTM on WGS 84'],
  ['EPSG:32719', -70.2, -33.4, PROJECTED_M, 'UTM, southern'],
  ['EPSG:26913', -105.3, 39.9, PROJECTED_M, 'UTM on NAD 83'],
  ['EPSG:6342', -105.3, 39.9, PROJECTED_M, 'UTM on NAD 83 (2011)'],
  ['EPSG:2232', -105.5, 39.2, PROJECTED_M, 'state plane, US survey feet'],
  ['EPSG:6428', -105.5, 39.2, PROJECTED_M, 'state plane (2011), US survey feet'],
  ['EPSG:2263', -74, 40.7, PROJECTED_M, 'state plane, US survey feet'],
  ['EPSG:2285', -121.5, 47.9, PROJECTED_M, 'state plane, US survey feet'],
  ['EPSG:5070', -105, 39, PROJECTED_M, 'Albers'],
  ['EPSG:6350', -122, 47, PROJECTED_M, 'Albers'],
  ['EPSG:3035', 11, 47, 1e-3, 'Lambert equal area, whose inverse is a short series'],
  ['EPSG:2193', 172, -42, PROJECTED_M, 'transverse Mercator'],
  ['EPSG:25832', 9, 48, PROJECTED_M, 'UTM on ETRS 89'],
  ['EPSG:2154', 3, 46, PROJECTED_M, 'Lambert conic'],
  ['EPSG:3006', 16, 62, PROJECTED_M, 'transverse Mercator'],
  ['EPSG:3794', 14.8, 46.1, PROJECTED_M, 'transverse Mercator'],
  ['EPSG:6677', 139.7, 35.8, PROJECTED_M, 'transverse Mercator'],
  ['EPSG:3763', -8.5, 39.5, PROJECTED_M, 'transverse Mercator'],
  ['EPSG:3413', -40, 70, PROJECTED_M, 'polar stereographic'],
  ['EPSG:3857', 10, 60, PROJECTED_M, 'web Mercator'],
  ['EPSG:4326', -128, 44, PROJECTED_M, 'geographic'],
  ['EPSG:4269', -105, 40, PROJECTED_M, 'geographic'],
  ['EPSG:27700', -3, 55, 0.01, 'national grid, shift'],
  ['EPSG:2056', 8, 46.8, 0.01, 'national grid, shift'],
  ['EPSG:21781', 8, 46.8, 0.01, 'national grid, shift'],
  ['EPSG:31287', 13, 47.5, 0.01, 'national grid, shift'],
  ['EPSG:28992', 5.5, 52.2, 0.01, 'national grid, shift'],
  ['EPSG:31370', 4.5, 50.6, 0.01, 'national grid, shift'],
  ['EPSG:3021', 15, 60, 0.01, 'national grid, shift'],
  ['EPSG:2393', 26, 63, 0.01, 'national grid, shift'],
  ['EPSG:2948', -67.6, 49.6, 0.01, 'national grid, shift'],
  ['EPSG:29902', -8, 53.4, 0.01, 'national grid, shift'],
  ['EPSG:31467', 9.5, 50, 2, 'national grid, PROJ by a grid file'],
  ['EPSG:2913', -120.5, 45, 2, 'state plane, feet; PROJ shifts its datum'],
];

const offsets = [-0.15, 0, 0.15].flatMap((dx) => [-0.1, 0, 0.1].map((dy) => [dx, dy] as const));

function proj(from: string, to: string, points: readonly (readonly [number, number])[]): [number, number][] {
  const input = points.map(([x, y]) => `${x} ${y}\n`).join('');
  const run = spawnSync('gdaltransform', ['-s_srs', from, '-t_srs', to, '-output_xy'], { input, encoding: 'utf8' });
  return run.stdout
    .trim()
    .split('\n')
    .map((line) => line.split(/\s+/).map(Number) as [number, number]);
}

describe.skipIf(!gdal)('PROJ', () => {
  const told: string[] = [];

  it.each(systems)('%s at %f, %f within %f m: %s', (code, lon, lat, toleranceM) => {
    const crs = crsOfText(table, code, 'test');
    const places = offsets.map(([dx, dy]) => [lon + dx, lat + dy] as const);
    const right = proj('EPSG:4326', code, places);
    const back = proj(code, 'EPSG:4326', right);
    let forward = 0;
    let inverse = 0;
    places.forEach(([a, b], i) => {
      const [x, y] = crs.fromLonLat(a, b);
      const off =
        crs.unitM === null
          ? geodesicM({ lon: x, lat: y }, { lon: right[i][0], lat: right[i][1] })
          : Math.hypot(x - right[i][0], y - right[i][1]) * crs.unitM;
      forward = Math.max(forward, off);
      const [toLon, toLat] = crs.toLonLat(...right[i]);
      inverse = Math.max(inverse, geodesicM({ lon: toLon, lat: toLat }, { lon: back[i][0], lat: back[i][1] }));
    });
    told.push(`${code} ${Math.max(forward, inverse).toFixed(4)} m`);
    expect(right.length).toBe(9);
    expect(forward).toBeLessThan(toleranceM);
    expect(inverse).toBeLessThan(toleranceM);
    if (told.length === systems.length) console.log(`against PROJ, largest difference: ${told.join(', ')}`);
  });

  it('agrees at a spread of the table: every sixtieth UTM system', () => {
    const rows: string[] = JSON.parse(readFileSync('src/geo/crs/epsg-table.json', 'utf8')).horizontal;
    const used = rows.map((row) => row.split('|')).filter(([, , definition]) => definition?.includes('+proj=utm'));
    let worst = 0;
    let compared = 0;
    for (let i = 0; i < used.length; i += 60) {
      const [code, , definition, accuracy] = used[i];
      const zone = Number(/\+zone=(\d+)/.exec(definition)?.[1]);
      const at = [zone * 6 - 182.3, /\+south/.test(definition) ? -21 : 21] as const;
      const [[x, y]] = proj('EPSG:4326', `EPSG:${code}`, [at]);
      const [ourX, ourY] = crsOfText(table, code, 'test').fromLonLat(...at);
      const off = Math.hypot(x - ourX, y - ourY);
      // Far from where a datum is used PROJ takes another shift; what the table states must still cover it.
      if (Number(accuracy || 0) > 4) continue;
      expect(off, `EPSG:${code}`).toBeLessThan(5);
      worst = Math.max(worst, off);
      compared++;
    }
    console.log(`${compared} UTM systems against PROJ: largest difference ${worst.toFixed(3)} m`);
    expect(compared).toBeGreaterThan(10);
  });

  const quebec = openData('quebec_road_1m');
  it.skipIf(!quebec)('puts a road line of the open data where it stands in longitude and latitude', () => {
    const line = (file: string): [number, number][] =>
      JSON.parse(readFileSync(join(quebec!, file), 'utf8')).features[0].geometry.coordinates;
    const own = line('derived_centerline_corrected_epsg2948.geojson');
    const degrees = line('derived_centerline_corrected_wgs84.geojson');
    const crs = crsOfText(table, 'EPSG:2948', 'test');
    const worst = Math.max(
      ...own.map(([x, y], i) => {
        const [lon, lat] = crs.toLonLat(x, y);
        return geodesicM({ lon, lat }, { lon: degrees[i][0], lat: degrees[i][1] });
      }),
    );
    console.log(`road line of quebec_road_1m: ${own.length} vertices, largest difference ${worst.toFixed(3)} m`);
    expect(own.length).toBe(degrees.length);
    // Printed to 10⁻⁷ degrees, 1.1 cm; the axes' shift within the accuracy that the table states.
    expect(worst).toBeLessThan(1.5);
  });

  it.skipIf(!hasProj('cs2cs', 'one coordinate'))('cs2cs says the same of a national grid', () => {
    const run = execFileSync('cs2cs', ['-f', '%.6f', 'EPSG:4326', 'EPSG:31287'], {
      input: '47.3 13.2\n',
      encoding: 'utf8',
    });
    const [north, east] = run.trim().split(/\s+/).map(Number);
    const [x, y] = crsOfText(table, 'EPSG:31287', 'test').fromLonLat(13.2, 47.3);
    // Authority order: northing first.
    expect(Math.hypot(x - east, y - north)).toBeLessThan(0.01);
  });
});
