import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { type Product, rasterProduct } from '../../src/terrain/index.ts';
import { hasGdal, scratch } from '../helpers/gdal.ts';
import { openData } from '../helpers/open-data.ts';
import { openRaster } from '../helpers/open-raster.ts';

// Slope, aspect and hillshade of single cells of open rasters, printed to 10⁻⁶ in tables beside them
// [source: open-data-cells]. The tables come from a float32 program: 0.01° as in the checks against it.
const tables: [folder: string, file: string, table: string, scale: number][] = [
  ['quebec_road_1m', 'j5gr_dtm.tif', 'j5gr_1m.csv', 1],
  ['bigtujunga_30m', 'srtm_bigtujunga30m_utm11.tif', 'bigtujunga_30m_int16.csv', 1],
  ['n43_gdal', 'n43.tif', 'n43_dted0_geographic_s111120.csv', 111120],
  ['lisbon_10m', 'dem_lisbon.tif', 'lisbon_10m_nocrs.csv', 1],
];
const gdal = hasGdal('slopes of single cells');
const folder = scratch();
afterAll(() => folder.remove());

describe.skipIf(!gdal)('cells of open rasters', () => {
  for (const [place, file, table, scale] of tables) {
    const path = gdal ? openData(place) : null;
    it.skipIf(!path)(`${place}: slope, aspect and hillshade as in ${table}`, () => {
      const raster = openRaster(place, file, folder.path(`${place}.raw`))!;
      const shape = { ...raster, eastM: raster.stepX * scale, northM: raster.stepY * scale };
      const made = (product: Product, formula: 'horn' | 'zevenbergen-thorne') =>
        rasterProduct(product, shape, raster.data, { formula });
      const columns = {
        horn_slope_deg: made({ kind: 'slope' }, 'horn'),
        horn_aspect_deg: made({ kind: 'aspect' }, 'horn'),
        zt_slope_deg: made({ kind: 'slope' }, 'zevenbergen-thorne'),
        zt_aspect_deg: made({ kind: 'aspect' }, 'zevenbergen-thorne'),
        hillshade_az315_alt45: made({ kind: 'hillshade', azimuthDeg: 315, altitudeDeg: 45 }, 'horn'),
      };
      const [head, ...rows] = readFileSync(join(path!, table), 'utf8')
        .split('\n')
        .filter((line) => line && !line.startsWith('#'));
      const names = head.split(',');
      let worst = 0;
      let cells = 0;
      for (const line of rows) {
        const row = Object.fromEntries(line.split(',').map((value, i) => [names[i], Number(value)]));
        const k = row.row * raster.width + row.col;
        expect(raster.data[k]).toBeCloseTo(row.z, 3);
        for (const [name, values] of Object.entries(columns)) {
          if (row[name] === -9999) {
            expect(values[k]).toBeNaN();
            continue;
          }
          const off = Math.abs(values[k] - row[name]);
          if (name.startsWith('hillshade')) expect(off).toBeLessThan(0.51);
          else if (name.includes('aspect')) {
            // On nearly level ground a rounding turns an azimuth at will: a turn counts by the slope it turns.
            worst = Math.max(worst, Math.min(off, 360 - off) * Math.tan((row.horn_slope_deg * Math.PI) / 180));
          } else worst = Math.max(worst, off);
        }
        cells++;
      }
      console.log(`${table}: largest difference ${worst.toPrecision(2)}° in ${cells} cells`);
      expect(cells).toBeGreaterThan(20);
      expect(worst).toBeLessThan(0.01);
    });
  }
});
