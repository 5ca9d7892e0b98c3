import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { crsOfText, loadEpsgTable, localPlane } from '../../src/geo/index.ts';
import { openElevation, readGround } from '../../src/io/elevation/index.ts';
import { fileSource } from '../../src/io/node/index.ts';
import { heightAt } from '../../src/terrain/index.ts';
import { openData } from '../helpers/open-data.ts';

// Streets with lowest, highest and mean height and gradient as another program computed them, bilinear, on the same 10 m
// raster [source: slopes-lisbon]. The raster names no system: it is asked for.
const lisbon = openData('lisbon_10m');

/** Heights that are the same but for float32, metres. */
const SAME_M = 1e-3;

interface Street {
  readonly properties: { Z_Min: number; Z_Max: number; Z_Mean: number; Avg_Slope: number };
  readonly geometry: { coordinates: [number, number][] };
}

describe.skipIf(!lisbon)('streets with published heights and gradients', () => {
  it('stand as high and climb as steeply on our samples', async () => {
    const source = await openElevation(fileSource(join(lisbon!, 'dem_lisbon.tif')), { crs: 'EPSG:3763' });
    const crs = crsOfText(await loadEpsgTable(), 'EPSG:3763', 'test');
    const streets: Street[] = JSON.parse(readFileSync(join(lisbon!, 'lisbon_road_network.geojson'), 'utf8')).features;
    const [lon, lat] = crs.toLonLat(-87_500, -106_000);
    const plane = localPlane({ lon, lat });
    const ground = await readGround([source], plane, { x: 0, y: 0 }, 2500);
    await source.close();
    // The published gradients stand on lengths in web Mercator, which stretches them by 1 ⁄ cos φ: undone here.
    const stretched = 1 / Math.cos((lat * Math.PI) / 180);
    const exact = { streets: 0, worstM: 0, offPercent: [] as number[] };
    let read = 0;
    for (const { properties, geometry } of streets) {
      const points = geometry.coordinates.map(([x, y]) => {
        const [a, b] = crs.toLonLat(x, y);
        const at = plane.toLocal({ lon: a, lat: b });
        return { x, y, z: heightAt(ground, at.x, at.y) };
      });
      const heights = points.map(({ z }) => z);
      if (heights.some(Number.isNaN)) continue;
      read++;
      const low = Math.min(...heights) - properties.Z_Min;
      const high = properties.Z_Max - Math.max(...heights);
      // Of lines in several parts the file holds the first: those lie inside the published range.
      expect(Math.min(low, high)).toBeGreaterThan(-SAME_M);
      if (Math.max(low, high) > SAME_M) continue;
      exact.streets++;
      exact.worstM = Math.max(exact.worstM, Math.abs(low), Math.abs(high));
      exact.offPercent.push(Math.abs(meanGradient(points) - properties.Avg_Slope * stretched));
    }
    const off = exact.offPercent.sort((a, b) => a - b);
    const [half, most] = [0.5, 0.9].map((share) => off[Math.floor(share * off.length)]);
    console.log(
      `${exact.streets} of ${read} streets: heights within ${(exact.worstM * 1000).toFixed(2)} mm, mean gradients within ${half.toFixed(4)} % for half of them, ${most.toFixed(4)} % for nine in ten`,
    );
    expect(read).toBeGreaterThan(250);
    expect(exact.streets / read).toBeGreaterThan(0.85);
    expect(half).toBeLessThan(0.01);
    expect(most).toBeLessThan(0.05);
  });
});

/** Percent, each piece counted by its length. */
function meanGradient(points: readonly { x: number; y: number; z: number }[]): number {
  let length = 0;
  let climbed = 0;
  for (let i = 1; i < points.length; i++) {
    length += Math.hypot(points[i].x - points[i - 1].x, points[i].y - points[i - 1].y);
    climbed += Math.abs(points[i].z - points[i - 1].z);
  }
  return (100 * climbed) / length;
}
