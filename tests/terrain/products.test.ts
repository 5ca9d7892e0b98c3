import { describe, expect, it } from 'vitest';
import { crsOfText, loadEpsgTable } from '../../src/geo/index.ts';
import {
  groundSteps,
  type Product,
  type ProductOptions,
  rasterProduct,
  streamProduct,
} from '../../src/terrain/index.ts';
import { seededRandom, toRadians } from '../../src/units/index.ts';

const slope: Product = { kind: 'slope' };
const aspect: Product = { kind: 'aspect' };
const hillshade: Product = { kind: 'hillshade', azimuthDeg: 315, altitudeDeg: 45 };
const WIDTH = 9;
const HEIGHT = 7;

/** Heights of a formula of metres east and north of the south-west cell. */
function cells(height: (east: number, north: number) => number, eastM = 1, northM = 1, width = WIDTH, rows = HEIGHT) {
  const data = Float64Array.from({ length: width * rows }, (_, k) =>
    height((k % width) * eastM, (rows - 1 - Math.floor(k / width)) * northM),
  );
  return { shape: { width, height: rows, eastM, northM }, data };
}

const middle = (values: Float32Array, width = WIDTH, rows = HEIGHT): number =>
  values[Math.floor(rows / 2) * width + Math.floor(width / 2)];

const formulas: ProductOptions[] = [{ formula: 'horn' }, { formula: 'zevenbergen-thorne' }];

describe('slope and aspect', () => {
  it.each(formulas)('are exact on a plane, cells not square: %o', (options) => {
    for (const [azimuth, angle] of [
      [0, 10],
      [37, 33],
      [180, 45],
      [271.5, 60],
      [359, 0.5],
    ]) {
      const fall = Math.tan(toRadians(angle));
      const [dx, dy] = [-fall * Math.sin(toRadians(azimuth)), -fall * Math.cos(toRadians(azimuth))];
      const { shape, data } = cells((x, y) => 500 + dx * x + dy * y, 0.7, 1.9);
      // Values are stored as float32: 2⁻²⁴ of 360.
      expect(middle(rasterProduct(slope, shape, data, options))).toBeCloseTo(angle, 5);
      expect(Math.abs(middle(rasterProduct(aspect, shape, data, options)) - azimuth)).toBeLessThan(3e-5);
    }
  });

  it('point down a cone from every side', () => {
    const size = 61;
    const { shape, data } = cells((x, y) => -Math.hypot(x - 30, y - 30), 1, 1, size, size);
    const toward = rasterProduct(aspect, shape, data);
    const steep = rasterProduct(slope, shape, data);
    let worst = 0;
    for (let i = 0; i < 360; i += 7) {
      const col = Math.round(30 + 25 * Math.sin(toRadians(i)));
      const row = Math.round(30 - 25 * Math.cos(toRadians(i)));
      const azimuth = (Math.atan2(col - 30, 30 - row) * 180) / Math.PI;
      const off = Math.abs(((toward[row * size + col] - azimuth + 540) % 360) - 180);
      worst = Math.max(worst, off);
      expect(steep[row * size + col]).toBeCloseTo(45, 0);
    }
    // The cone is curved: its gradient over two cells at 25 m turns by under 0.05°.
    expect(worst).toBeLessThan(0.05);
  });

  it('are level in a level place: no aspect, slope nothing', () => {
    const { shape, data } = cells(() => 12);
    expect(middle(rasterProduct(slope, shape, data))).toBe(0);
    expect(middle(rasterProduct(aspect, shape, data))).toBeNaN();
  });

  it('differ between the formulas only by the corner cells', () => {
    const { shape, data } = cells((x, y) => (x === 3 && y === 2 ? 1 : 0));
    const horn = rasterProduct(slope, shape, data, formulas[0]);
    const middles = rasterProduct(slope, shape, data, formulas[1]);
    // One raised cell seen from its corner and from its side.
    const corner = 3 * WIDTH + 2;
    const side = 4 * WIDTH + 2;
    expect(horn[corner]).toBeCloseTo((Math.atan(Math.hypot(1 / 8, 1 / 8)) * 180) / Math.PI, 5);
    expect(middles[corner]).toBe(0);
    expect(horn[side]).toBeCloseTo((Math.atan(2 / 8) * 180) / Math.PI, 5);
    expect(middles[side]).toBeCloseTo((Math.atan(1 / 2) * 180) / Math.PI, 5);
  });
});

describe('hillshade', () => {
  it('is the cosine between light and ground, 1 in shadow', () => {
    const level = cells(() => 3);
    expect(middle(rasterProduct(hillshade, level.shape, level.data))).toBeCloseTo(1 + 254 * Math.SQRT1_2, 4);
    const facing = cells((x, y) => Math.SQRT1_2 * (x - y));
    expect(middle(rasterProduct(hillshade, facing.shape, facing.data))).toBeCloseTo(255, 4);
    const away = cells((x, y) => 2 * (y - x));
    expect(middle(rasterProduct(hillshade, away.shape, away.data))).toBe(1);
  });
});

describe('missing ground', () => {
  it.each(formulas)('takes the nine cells around it and the border: %o', (options) => {
    const { shape, data } = cells((x, y) => (x === 4 && y === 3 ? Number.NaN : 2 * x + y));
    for (const product of [slope, aspect, hillshade]) check(rasterProduct(product, shape, data, options));

    function check(values: Float32Array): void {
      for (let row = 0; row < HEIGHT; row++) {
        for (let col = 0; col < WIDTH; col++) {
          const border = row === 0 || col === 0 || row === HEIGHT - 1 || col === WIDTH - 1;
          const beside = Math.abs(col - 4) <= 1 && Math.abs(row - 3) <= 1;
          expect(Number.isNaN(values[row * WIDTH + col])).toBe(border || beside);
        }
      }
    }
  });

  it('is guessed only when asked for, and a missing cell stays missing', () => {
    const { shape, data } = cells((x, y) => (x === 4 && y === 3 ? Number.NaN : 2 * x + y));
    const values = rasterProduct(slope, shape, data, { computeEdges: true });
    const missing = [...values.keys()].filter((k) => Number.isNaN(values[k]));
    expect(missing).toEqual([3 * WIDTH + 4]);
    // The left border continues the plane; only the first and last rows repeat their corners.
    expect(values[2 * WIDTH]).toBeCloseTo((Math.atan(Math.sqrt(5)) * 180) / Math.PI, 4);
  });

  it('is all there is in a raster of one row or column', () => {
    for (const [width, height] of [
      [1, 5],
      [5, 1],
      [1, 1],
      [2, 5],
    ]) {
      const values = rasterProduct(slope, { width, height, eastM: 1, northM: 1 }, new Float64Array(width * height));
      expect([...values].every(Number.isNaN)).toBe(true);
    }
  });
});

describe('streamProduct', () => {
  it('gives the same rows as the raster in memory, by promise or not', async () => {
    const random = seededRandom(11);
    const width = 23;
    const height = 17;
    const data = Float32Array.from({ length: width * height }, (_, k) => (k % 41 === 7 ? Number.NaN : random.normal()));
    const shape = { width, height, eastM: 2, northM: Float64Array.from({ length: height }, (_, row) => 2 + row / 100) };
    for (const options of [{}, { computeEdges: true }, ...formulas]) {
      for (const product of [slope, aspect, hillshade]) {
        const whole = rasterProduct(product, shape, data, options);
        const streamed = new Float32Array(width * height);
        const order: number[] = [];
        await streamProduct(
          product,
          shape,
          (row) => {
            const heights = data.subarray(row * width, (row + 1) * width);
            return row % 2 === 0 ? heights : Promise.resolve(heights);
          },
          (row, values) => {
            order.push(row);
            streamed.set(values, row * width);
            return row % 3 === 0 ? Promise.resolve() : undefined;
          },
          options,
        );
        expect(order).toEqual([...Array(height).keys()]);
        expect(streamed).toEqual(whole);
      }
    }
  });
});

describe('groundSteps', () => {
  const grid = { width: 3, height: 3, data: new Float32Array(9) };

  it('measures cells on the ground: degrees, feet, and Mercator without its stretching', async () => {
    const table = await loadEpsgTable();
    const degrees = groundSteps(
      { ...grid, x0: 10, y0: 60, stepX: 1e-4, stepY: 1e-4 },
      crsOfText(table, 'EPSG:4326', 'test'),
    );
    // Metres in 10⁻⁴ degrees of longitude and latitude at 60° on WGS 84 (series in latitude).
    expect(degrees.eastM[0]).toBeCloseTo(5.58002, 3);
    expect(degrees.northM[0]).toBeCloseTo(11.14122, 3);
    const feet = groundSteps(
      { ...grid, x0: 3_000_000, y0: 1_500_000, stepX: 3, stepY: 3 },
      crsOfText(table, 'EPSG:2232', 'test'),
    );
    expect(feet.eastM[1]).toBeCloseTo((3 * 1200) / 3937, 3);
    const mercator = crsOfText(table, 'EPSG:3857', 'test');
    const [x, y] = mercator.fromLonLat(10, 60);
    const wide = groundSteps({ ...grid, x0: x, y0: y, stepX: 2, stepY: 2 }, mercator);
    expect(wide.eastM[0]).toBeCloseTo(2 * Math.cos(toRadians(60)), 2);
  });
});
