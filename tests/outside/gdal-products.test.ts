import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { type Product, type ProductOptions, rasterProduct } from '../../src/terrain/index.ts';
import { gdalInfo, gdalValues, hasGdal, scratch } from '../helpers/gdal.ts';
import { openData } from '../helpers/open-data.ts';
import { gdalRaster, type OpenRaster, openRaster } from '../helpers/open-raster.ts';

// [source: gdal] gdaldem sums in float32: 0.01° is its own rounding at heights of hundreds of metres, not ours.
const GDALDEM_DEG = 0.01;
/** Against a twin in float64 only our storing as float32 remains: 2⁻²⁴ of 90° for slopes, of 360° for azimuths. */
const TWIN_SLOPE_DEG = 1e-5;
const TWIN_ASPECT_DEG = 2e-5;

const gdal = hasGdal('slope, aspect and hillshade against gdaldem');
const folder = scratch();
afterAll(() => folder.remove());
let runs = 0;

const slope: Product = { kind: 'slope' };
const aspect: Product = { kind: 'aspect' };
const hillshade: Product = { kind: 'hillshade', azimuthDeg: 315, altitudeDeg: 45 };
const zt: ProductOptions = { formula: 'zevenbergen-thorne' };

/** What gdaldem makes, no data as NaN. */
function gdaldem(mode: string, path: string, ...args: string[]): Float64Array {
  const made = folder.path(`${runs++}.tif`);
  execFileSync('gdaldem', [mode, path, made, '-q', ...args]);
  const noData = mode === 'hillshade' ? 0 : -9999;
  return gdalValues(made, folder.path(`${runs}.raw`)).map((value) => (value === noData ? Number.NaN : value));
}

const radians = Math.PI / 180;

interface Difference {
  worst: number;
  compared: number;
  onlyOne: number;
}

function compare(ours: ArrayLike<number>, theirs: ArrayLike<number>, off: (k: number) => number): Difference {
  const found = { worst: 0, compared: 0, onlyOne: 0 };
  for (let k = 0; k < ours.length; k++) {
    if (Number.isNaN(ours[k]) !== Number.isNaN(theirs[k])) found.onlyOne++;
    if (Number.isNaN(ours[k]) || Number.isNaN(theirs[k])) continue;
    found.compared++;
    found.worst = Math.max(found.worst, off(k));
  }
  return found;
}

const turn = (a: number, b: number): number => Math.abs(((((a - b + 180) % 360) + 360) % 360) - 180);

function say(raster: string, what: string, { worst, compared, onlyOne }: Difference, unit = '°'): void {
  console.log(
    `${raster}: ${what}: largest difference ${worst.toPrecision(2)}${unit} of ${compared} cells, ${onlyOne} in one alone`,
  );
}

/** The two million cells of the first are compared once, a part of them in every way. */
/** The demo's ground is there on every machine. */
const DEMO = 'data/demo';
const files: [folder: string, file: string, scale: number, once?: boolean][] = [
  ['quebec_road_1m', 'j5gr_dtm.tif', 1, true],
  ['quebec_road_1m_encodings', 'j5gr_01_strip_none.tif', 1],
  ['bigtujunga_30m', 'srtm_bigtujunga30m_utm11.tif', 1],
  ['n43_gdal', 'n43.tif', 111120],
  ['alps_5m', 'avaAlr_avaAlr.tif', 1],
  ['city_2m_cog', 'dtm.tif', 1],
  ['city_2m_cog', 'dsm.tif', 1],
  [DEMO, 'elevation-10m.tif', 1],
];

describe.skipIf(!gdal)('gdaldem', () => {
  for (const [place, file, scale, once = false] of files) {
    const raw = folder.path(`${place.replaceAll('/', '-')}-${file}.raw`);
    const raster = !gdal ? null : place === DEMO ? demoRaster(file, raw) : openRaster(place, file, raw);
    describe.skipIf(!raster)(`${place}/${file}`, () => {
      const { width, height, data, path, stepX, stepY } = raster ?? ({} as OpenRaster);
      const shape = { width, height, eastM: stepX * scale, northM: stepY * scale };
      const scaled = scale === 1 ? [] : ['-s', String(scale)];

      const every: [string, ProductOptions, string[]][] = [
        ['Horn', {}, []],
        ['Zevenbergen–Thorne', zt, ['-alg', 'ZevenbergenThorne']],
        ['Horn with edges', { computeEdges: true }, ['-compute_edges']],
        [
          'Zevenbergen–Thorne with edges',
          { ...zt, computeEdges: true },
          ['-compute_edges', '-alg', 'ZevenbergenThorne'],
        ],
      ];
      it.each(once ? every.slice(0, 1) : every)('slope, %s', (name, options, args) => {
        const ours = rasterProduct(slope, shape, data, options);
        const theirs = gdaldem('slope', path, ...scaled, ...args);
        const found = compare(ours, theirs, (k) => Math.abs(ours[k] - theirs[k]));
        say(file, `slope, ${name}`, found);
        expect(found.compared).toBeGreaterThan(10_000);
        expect(found.onlyOne).toBe(0);
        expect(found.worst).toBeLessThan(GDALDEM_DEG);
      });

      it.each(once ? [] : every.slice(0, 3))('aspect, %s', (name, options, args) => {
        // gdaldem leaves cell sizes out of aspects: with square cells that is the same.
        expect(stepX).toBeCloseTo(stepY, 9);
        const ours = rasterProduct(aspect, shape, data, options);
        const steep = rasterProduct(slope, shape, data, options);
        const theirs = gdaldem('aspect', path, ...args);
        // On nearly level ground a rounding turns an azimuth at will: a turn counts by the slope it turns.
        const found = compare(ours, theirs, (k) => turn(ours[k], theirs[k]) * Math.tan(steep[k] * radians));
        say(file, `aspect times slope, ${name}`, found);
        expect(found.compared).toBeGreaterThan(9_000);
        expect(found.worst).toBeLessThan(GDALDEM_DEG);
        // One may call level what a rounding lets the other turn; nothing else may differ in what is missing.
        const steepest = ours.reduce(
          (most, at, k) => (Number.isNaN(at) === Number.isNaN(theirs[k]) ? most : Math.max(most, steep[k])),
          0,
        );
        expect(steepest).toBeLessThan(GDALDEM_DEG);
      });

      it('hillshade', () => {
        const ours = rasterProduct(hillshade, shape, data);
        const theirs = gdaldem('hillshade', path, ...scaled);
        const found = compare(ours, theirs, (k) => Math.abs(ours[k] - theirs[k]));
        say(file, 'hillshade, before our rounding', found, ' of 255');
        expect(found.onlyOne).toBe(0);
        // Its whole numbers are rounded: half a step and the float32 sum.
        expect(found.worst).toBeLessThan(0.51);
      });

      it('slope and aspect against a twin in float64', () => {
        const ours = rasterProduct(slope, shape, data);
        const ours2 = rasterProduct(aspect, shape, data);
        const [theirs, theirs2] = twin(data, width, height, shape.eastM, shape.northM);
        const found = compare(ours, theirs, (k) => Math.abs(ours[k] - theirs[k]));
        const found2 = compare(ours2, theirs2, (k) => turn(ours2[k], theirs2[k]));
        say(file, 'slope against float64', found);
        say(file, 'aspect against float64', found2);
        expect([found.onlyOne, found2.onlyOne]).toEqual([0, 0]);
        expect(found.compared).toBeGreaterThan(10_000);
        expect(found.worst).toBeLessThan(TWIN_SLOPE_DEG);
        expect(found2.worst).toBeLessThan(TWIN_ASPECT_DEG);
      });
    });
  }

  const n43 = gdal ? openData('n43_gdal') : null;
  it.skipIf(!n43)('gives the checksums that its own tests publish [source: gdal-autotest]', () => {
    const checksum = (mode: string, ...args: string[]): number => {
      const made = folder.path(`${runs++}.tif`);
      execFileSync('gdaldem', [mode, join(n43!, 'n43.tif'), made, '-q', ...args]);
      return Number(/Checksum=(\d+)/.exec(execFileSync('gdalinfo', ['-checksum', made], { encoding: 'utf8' }))?.[1]);
    };
    expect(checksum('slope', '-s', '111120')).toBe(63748);
    expect(checksum('slope', '-s', '111120', '-alg', 'ZevenbergenThorne')).toBe(64393);
    expect(checksum('aspect')).toBe(54885);
    expect(checksum('hillshade', '-s', '111120', '-z', '30')).toBe(45587);
    expect(gdalInfo(join(n43!, 'n43.tif')).size).toEqual([121, 121]);
  });
});

function demoRaster(file: string, raw: string): OpenRaster | null {
  const path = join(DEMO, file);
  return existsSync(path) ? gdalRaster(path, raw) : null;
}

/** Horn's slope and aspect, degrees, cell by cell from the printed formula and nothing shared with the program. */
function twin(
  z: Float64Array,
  width: number,
  height: number,
  eastM: number,
  northM: number,
): [Float64Array, Float64Array] {
  const slopes = new Float64Array(z.length).fill(Number.NaN);
  const aspects = new Float64Array(z.length).fill(Number.NaN);
  for (let r = 1; r < height - 1; r++) {
    for (let c = 1; c < width - 1; c++) {
      const k = r * width + c;
      const [a, b, cc] = [z[k - width - 1], z[k - width], z[k - width + 1]];
      const [d, e, f] = [z[k - 1], z[k], z[k + 1]];
      const [g, h, i] = [z[k + width - 1], z[k + width], z[k + width + 1]];
      const dzdx = (cc + 2 * f + i - (a + 2 * d + g)) / (8 * eastM);
      const dzdy = (g + 2 * h + i - (a + 2 * b + cc)) / (8 * northM);
      if (Number.isNaN(e)) continue;
      slopes[k] = Math.atan(Math.hypot(dzdx, dzdy)) / radians;
      if (dzdx !== 0 || dzdy !== 0) {
        const azimuth = 90 - Math.atan2(dzdy, -dzdx) / radians;
        aspects[k] = azimuth < 0 ? azimuth + 360 : azimuth;
      }
    }
  }
  return [slopes, aspects];
}
