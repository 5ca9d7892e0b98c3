import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { localPlane } from '../../src/geo/index.ts';
import { openElevation, readGround } from '../../src/io/elevation/index.ts';
import { fileSource } from '../../src/io/node/index.ts';
import { looksLikeSurfaceModel } from '../../src/terrain/index.ts';
import { openData } from '../helpers/open-data.ts';
import { groundFrom } from '../helpers/plane-ground.ts';

const line = Float64Array.from({ length: 122 }, (_, i) => (i % 2 === 0 ? i / 2 - 30 : 0.2 * (i / 2 - 30)));
const slope = (x: number, y: number): number => 500 + 0.6 * x - 0.3 * y;
/** Crowns of 3 m radius and 8 m height on a 20 m raster of trees. */
const trees = (x: number, y: number): number =>
  Math.hypot(x - 20 * Math.round(x / 20), y - 20 * Math.round(y / 20) - 2) < 3 ? 8 : 0;

describe('looksLikeSurfaceModel', () => {
  it('notices trees and a house on a slope', () => {
    expect(
      looksLikeSurfaceModel(
        groundFrom((x, y) => slope(x, y) + trees(x, y), 161),
        line,
      ),
    ).toBe(true);
    const house = (x: number, y: number): number => (Math.abs(x - 5) < 5 && Math.abs(y - 12) < 4 ? 6 : 0);
    expect(
      looksLikeSurfaceModel(
        groundFrom((x, y) => slope(x, y) + house(x, y), 161),
        line,
      ),
    ).toBe(true);
  });

  it('takes slopes, ridges, cuts, walls, knolls and rough ground for ground', () => {
    const grounds: ((x: number, y: number) => number)[] = [
      slope,
      (x) => 20 - Math.abs(x),
      (x, y) => slope(x, y) + (Math.abs(y) < 5 ? 0 : 4 * Math.sign(y)),
      (_, y) => (y > 3 ? 5 : 0),
      (x, y) => 3 * Math.exp(-(x * x + y * y) / 400),
      (x, y) => slope(x, y) + 0.6 * Math.sin(x / 1.2) * Math.cos(y / 1.7),
      (x, y) => slope(x, y) + (Math.hypot(x - 8, y - 9) < 1.2 ? 3 : 0),
    ];
    for (const height of grounds) expect(looksLikeSurfaceModel(groundFrom(height, 161), line)).toBe(false);
  });

  it('says nothing where there is no ground', () => {
    expect(
      looksLikeSurfaceModel(
        groundFrom(() => Number.NaN),
        line,
      ),
    ).toBe(false);
    expect(looksLikeSurfaceModel({ plane: localPlane({ lon: 0, lat: 0 }), layers: [] }, line)).toBe(false);
    expect(looksLikeSurfaceModel(groundFrom(slope, 161), new Float64Array(2))).toBe(false);
  });

  const city = openData('city_2m_cog');
  const quebec = openData('quebec_road_1m');
  const look = async (path: string, lon: number, lat: number): Promise<boolean> => {
    const source = await openElevation(fileSource(path));
    const ground = await readGround([source], localPlane({ lon, lat }), { x: 0, y: 0 }, 100);
    await source.close();
    return looksLikeSurfaceModel(ground, line);
  };
  it.skipIf(!city)('tells the surface model of a town from its bare earth', async () => {
    for (const [lon, lat] of [
      [-77.0526, 38.8106],
      [-77.0515, 38.812],
      [-77.0535, 38.8095],
    ]) {
      expect(await look(join(city!, 'dsm.tif'), lon, lat)).toBe(true);
      expect(await look(join(city!, 'dtm.tif'), lon, lat)).toBe(false);
    }
  });
  it.skipIf(!quebec)('takes the bare earth of a forest road for ground', async () => {
    for (const lat of [49.6401, 49.6414, 49.645]) {
      expect(await look(join(quebec!, 'j5gr_dtm.tif'), -67.6104, lat)).toBe(false);
    }
  });
});
