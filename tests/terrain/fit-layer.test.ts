import proj4 from 'proj4';
import { describe, expect, it } from 'vitest';
import { localPlane } from '../../src/geo/index.ts';
import { fitLayer, type Grid, heightAt } from '../../src/terrain/index.ts';
import { bareEarth } from '../helpers/plane-ground.ts';

const systems = {
  'UTM at the edge of its zone': ['+proj=utm +zone=33 +datum=WGS84', [18.2, 47.1], 1],
  'geographic, 67° north': ['+proj=longlat +datum=WGS84', [20.3, 67.2], 1e-5],
  'Albers far from its meridian': [
    '+proj=aea +lat_0=23 +lon_0=-96 +lat_1=29.5 +lat_2=45.5 +x_0=0 +y_0=0 +ellps=GRS80',
    [-122.3, 47.5],
    1,
  ],
  'a plane in US survey feet': [
    '+proj=lcc +lat_0=37.8333333333333 +lon_0=-105.5 +lat_1=39.75 +lat_2=38.45 +x_0=914401.828803657 +y_0=304800.609601219 +ellps=GRS80 +units=us-ft',
    [-104.2, 39.1],
    3,
  ],
  'web Mercator, 60° north': ['+proj=merc +a=6378137 +b=6378137 +nadgrids=@null', [10.2, 60.1], 2],
} as const;

describe('fitLayer', () => {
  for (const [name, [definition, [lon, lat], step]] of Object.entries(systems)) {
    it(`places cells to under 1 mm over 800 m: ${name}`, () => {
      const projection = proj4('+proj=longlat +datum=WGS84', definition);
      const plane = localPlane({ lon, lat });
      const [x, y] = projection.forward([lon, lat]);
      const size = 11;
      const grid: Grid = {
        width: size,
        height: size,
        data: new Float64Array(size * size),
        x0: x,
        y0: y,
        stepX: step,
        stepY: step * 1.5,
      };
      const box = { west: -380, south: -410, east: 420, north: 390 };
      const layer = fitLayer(
        { ...bareEarth, cellM: 1 },
        grid,
        plane,
        box,
        (a, b) => projection.forward([a, b]) as [number, number],
      );
      const { fit } = layer;
      let worstM = 0;
      for (let i = 0; i < 200; i++) {
        const px = box.west + ((i * 37) % 801);
        const py = box.south + ((i * 113) % 801);
        const { lon: a, lat: b } = plane.toLonLat({ x: px, y: py });
        const [rx, ry] = projection.forward([a, b]);
        const col = fit[0] + fit[1] * px + fit[2] * py + fit[3] * px * py + fit[8] * px * px + fit[9] * py * py;
        const row = fit[4] + fit[5] * px + fit[6] * py + fit[7] * px * py + fit[10] * px * px + fit[11] * py * py;
        const back = projection.inverse([grid.x0 + col * step, grid.y0 - row * step * 1.5]);
        const found = plane.toLocal({ lon: back[0], lat: back[1] });
        expect(Number.isFinite(rx + ry)).toBe(true);
        worstM = Math.max(worstM, Math.hypot(found.x - px, found.y - py));
      }
      expect(worstM).toBeLessThan(1e-3);
    });
  }

  it('refuses a window that is too large to place to 1 cm', () => {
    const projection = proj4('+proj=longlat +datum=WGS84', '+proj=longlat +datum=WGS84');
    const plane = localPlane({ lon: 10, lat: 60 });
    const grid: Grid = { width: 2, height: 2, data: new Float64Array(4), x0: 10, y0: 60, stepX: 1e-3, stepY: 1e-3 };
    const far = 40_000;
    expect(() =>
      fitLayer(
        { ...bareEarth, cellM: 111 },
        grid,
        plane,
        { west: -far, south: -far, east: far, north: far },
        (a, b) => projection.forward([a, b]) as [number, number],
      ),
    ).toThrow(/cannot be placed to 1 cm .*; read a smaller one/);
  });

  it('puts a height where its cell centre is, in degrees', () => {
    const plane = localPlane({ lon: -128, lat: 44 });
    const step = 1e-4;
    const grid: Grid = {
      width: 5,
      height: 5,
      data: Float64Array.from({ length: 25 }, (_, k) => k),
      x0: -128 - 2 * step,
      y0: 44 + 2 * step,
      stepX: step,
      stepY: step,
    };
    const layer = fitLayer(bareEarth, grid, plane, { west: -20, south: -20, east: 20, north: 20 }, (lon, lat) => [
      lon,
      lat,
    ]);
    const ground = { plane, layers: [layer] };
    expect(heightAt(ground, 0, 0)).toBeCloseTo(12, 6);
    const east = plane.toLocal({ lon: -128 + step, lat: 44 });
    expect(heightAt(ground, east.x, east.y)).toBeCloseTo(13, 6);
    const north = plane.toLocal({ lon: -128, lat: 44 + step });
    expect(heightAt(ground, north.x, north.y)).toBeCloseTo(7, 6);
  });
});
