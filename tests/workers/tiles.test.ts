import { VectorTile } from '@mapbox/vector-tile';
import { PbfReader } from 'pbf';
import { describe, expect, test } from 'vitest';
import type { ElevationSource, LonLatBox, MapGround } from '../../src/io/index.ts';
import { FOOT_M } from '../../src/units/index.ts';
import {
  contourTiles,
  finestZoom,
  latAt,
  lonAt,
  pixelM,
  TILE_SIZE,
  terrarium,
  tileBox,
  tileHeights,
} from '../../src/workers/tiles/index.ts';

const tile = { z: 14, x: 2366, y: 5954 };

/** A source whose height is a formula of the position, on a grid in degrees wherever it is asked. */
function formulaSource(height: (lon: number, lat: number) => number, covers = (_lon: number) => true): ElevationSource {
  const readForMap = async (box: LonLatBox): Promise<MapGround> => {
    const n = 400;
    const stepX = (box.east - box.west) / (n - 1);
    const stepY = (box.north - box.south) / (n - 1);
    const data = new Float32Array(n * n);
    for (let j = 0; j < n; j++) {
      for (let i = 0; i < n; i++) {
        const lon = box.west + i * stepX;
        data[j * n + i] = covers(lon) ? height(lon, box.north - j * stepY) : Number.NaN;
      }
    }
    const grid = { width: n, height: n, data, x0: box.west, y0: box.north, stepX, stepY };
    return { grid, toIndex: ({ lon, lat }) => ({ col: (lon - box.west) / stepX, row: (box.north - lat) / stepY }) };
  };
  return { readForMap } as unknown as ElevationSource;
}

describe('the web map’s grid', () => {
  test('tile 0/0/0 is the square Mercator world', () => {
    const box = tileBox({ z: 0, x: 0, y: 0 });
    expect(box.west).toBeCloseTo(-180, 9);
    expect(box.east).toBeCloseTo(180, 9);
    // atan(sinh π), the latitude at which the spherical Mercator map is square.
    expect(box.north).toBeCloseTo(85.0511287798, 8);
    expect(box.south).toBeCloseTo(-85.0511287798, 8);
  });

  test('a pixel at zoom 0 on the equator is 156,543 m, and halves with each zoom', () => {
    expect(pixelM({ z: 0, x: 0, y: 0 })).toBeCloseTo(156543.03392804097, 6);
    const equator = { z: 10, x: 512, y: 511 };
    expect(pixelM(equator) * 2 ** 10).toBeCloseTo(156543, -2);
  });

  test('the finest zoom has pixels near the cell, never twice as large', () => {
    for (const cellM of [0.5, 1, 2, 5, 10, 30]) {
      const z = finestZoom(cellM, 44);
      const metres = (156543.034 * Math.cos((44 * Math.PI) / 180)) / 2 ** z;
      expect(metres).toBeLessThan(2 * cellM);
    }
  });
});

describe('heights of a tile', () => {
  test('stand at pixel centres, north row first', async () => {
    const plane = (lon: number, lat: number): number => 1000 + 4000 * (lon + 128) + 9000 * (lat - 44);
    const heights = await tileHeights([formulaSource(plane)], tile);
    let worst = 0;
    for (const [px, py] of [
      [0, 0],
      [255, 0],
      [0, 255],
      [255, 255],
      [17, 200],
      [128, 31],
    ] as const) {
      const expected = plane(lonAt(tile, px + 0.5), latAt(tile, py + 0.5));
      worst = Math.max(worst, Math.abs(heights[py * TILE_SIZE + px]! - expected));
    }
    // Float32 at 1,000 m and straight lines between control points.
    expect(worst).toBeLessThan(0.002);
  });

  test('the first source wins, the next fills what it lacks, the rest is missing', async () => {
    const middle = lonAt(tile, 128);
    const fine = formulaSource(
      () => 1,
      (lon) => lon < middle,
    );
    const coarse = formulaSource(
      () => 2,
      (lon) => lon < lonAt(tile, 200),
    );
    const heights = await tileHeights([fine, coarse], tile);
    expect([heights[100], heights[160], heights[250]]).toEqual([1, 2, Number.NaN]);
  });

  test('no source at all is no ground', async () => {
    const nowhere = { readForMap: async () => null } as unknown as ElevationSource;
    const heights = await tileHeights([nowhere], tile);
    expect(heights.every(Number.isNaN)).toBe(true);
  });
});

describe('terrarium colours', () => {
  const decode = (bytes: Uint8ClampedArray, i: number): number =>
    bytes[4 * i]! * 256 + bytes[4 * i + 1]! + bytes[4 * i + 2]! / 256 - 32768;

  test('2523.266 m is 137, 219, 68 [source: terrarium]', () => {
    const bytes = terrarium(new Float32Array(TILE_SIZE * TILE_SIZE).fill(2523.266));
    expect([...bytes.subarray(0, 4)]).toEqual([137, 219, 68, 255]);
  });

  test('every height comes back within a step, below the sea too', () => {
    const heights = new Float32Array(TILE_SIZE * TILE_SIZE).map((_, i) => -450 + i * 0.1371);
    const bytes = terrarium(heights);
    let worst = 0;
    for (let i = 0; i < heights.length; i++) worst = Math.max(worst, Math.abs(decode(bytes, i) - heights[i]!));
    expect(worst).toBeLessThanOrEqual(1 / 256);
  });

  test('missing pixels take a neighbour’s height for the shading, and the input is left as it was', () => {
    const heights = new Float32Array(TILE_SIZE * TILE_SIZE).fill(Number.NaN);
    heights[5 * TILE_SIZE + 9] = 700;
    const bytes = terrarium(heights);
    expect(decode(bytes, 0)).toBe(700);
    expect(decode(bytes, heights.length - 1)).toBe(700);
    expect(Number.isNaN(heights[0])).toBe(true);
  });
});

test('contours of a tilted plane are straight, at round feet, where the plane has that height', async () => {
  const plane = (lon: number): number => 300 + 20000 * (lon - lonAt(tile, 0));
  const heights = (address: typeof tile) => tileHeights([formulaSource(plane)], address);
  const bytes = await contourTiles(heights, 5, 44)(tile, 'us');
  const layer = new VectorTile(new PbfReader(new Uint8Array(bytes))).layers.contours!;
  expect(layer.length).toBeGreaterThan(3);
  let points = 0;
  for (let i = 0; i < layer.length; i++) {
    const feature = layer.feature(i);
    const feet = Number(feature.properties.ele);
    expect(feet % 40).toBe(0);
    expect(feature.properties.level).toBe(feet % 200 === 0 ? 1 : 0);
    for (const { x } of feature.loadGeometry().flat()) {
      const height = plane(lonAt(tile, (x / 4096) * TILE_SIZE)) / FOOT_M;
      // A pixel of the tile falls 5.6 ft here; the contour must lie within a tenth of it.
      expect(Math.abs(height - feet)).toBeLessThan(0.6);
      points++;
    }
  }
  expect(points).toBeGreaterThan(100);
});
