import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { localPlane } from '../../src/geo/index.ts';
import { openElevation, readGround, readRoads } from '../../src/io/index.ts';
import { fileSource } from '../../src/io/node/index.ts';
import { type Bench, benchInput, defaultSetbacks, findBench, indexRoads, KIND, roadAt } from '../../src/road/index.ts';
import { type Ground, heightAt } from '../../src/terrain/index.ts';
import { repeatedMedian } from '../helpers/edge-key.ts';
import { openData } from '../helpers/open-data.ts';

/**
 * A real forest road on 1 m lidar, with its line as mapped (metres off) and as corrected by another program
 * [source: alsroads], and the ten points where an independent script sampled the falls beside it.
 */
const folder = openData('quebec_road_1m');

interface Measured {
  readonly bench: Bench;
  readonly ground: Ground;
}

describe.skipIf(!folder)('a real road', () => {
  let mapped: Measured;
  let corrected: Measured;
  let centre: Float64Array;
  const points = folder ? roadPoints(folder) : [];

  beforeAll(async () => {
    mapped = await measure('original');
    corrected = await measure('corrected');
    const { ways } = readRoads(readFileSync(join(folder!, lineFile('corrected')), 'utf8'), 'corrected');
    const { plane } = mapped.ground;
    centre = Float64Array.from(
      Array.from({ length: ways[0].line.length / 2 }, (_, k) => {
        const { x, y } = plane.toLocal({ lon: ways[0].line[2 * k], lat: ways[0].line[2 * k + 1] });
        return [x, y];
      }).flat(),
    );
  }, 60_000);

  it('the line as mapped is metres off: the test would otherwise say nothing', () => {
    const { bench } = mapped;
    const off = Array.from(bench.x, (x, i) => distanceTo(centre, x, bench.y[i]));
    expect(bench.count).toBeGreaterThan(900);
    expect(off.filter((d) => d > 4).length / off.length).toBeGreaterThan(0.7);
  });

  it('the road is found within 2.5 m of the corrected line at 95 % of stations', () => {
    const { bench } = mapped;
    const off = Array.from(bench.x, (x, i) =>
      distanceTo(centre, x + bench.shiftM[i] * bench.normalX[i], bench.y[i] + bench.shiftM[i] * bench.normalY[i]),
    );
    expect(off.filter((d) => d <= 2.5).length / off.length).toBeGreaterThanOrEqual(0.95);
    expect(bench.notes.some(({ code }) => code === 'line-shift')).toBe(true);
  });

  it.each(points)('$id: the drop is told, its edge within 1 m of the definition read off the raster', (point) => {
    for (const { bench, ground } of [mapped, corrected]) {
      const { x, y } = ground.plane.toLocal(point);
      const i = nearestStation(bench, x, y);
      const az = (point.azimuthDeg * Math.PI) / 180;
      const right = Math.sin(az) * bench.normalX[i] + Math.cos(az) * bench.normalY[i] > 0;
      const side = right ? bench.right : bench.left;
      expect(side.kind[i]).toBe(KIND.drop);
      // The written definition by another line fit, on the section through the middle of the road at this station.
      const sign = right ? 1 : -1;
      const zAt = (q: number): number =>
        heightAt(
          ground,
          bench.x[i] + (bench.shiftM[i] + sign * q) * bench.normalX[i],
          bench.y[i] + (bench.shiftM[i] + sign * q) * bench.normalY[i],
        );
      const edge = sign * (side.edgeOffsetM[i] - bench.shiftM[i]);
      const firm = sign * (side.firmOffsetM[i] - bench.shiftM[i]);
      const defined = definedEdge(zAt);
      // Where the shoulder bends twice (17 to 25 %, then 50 %) either break may be the definition's: both are told.
      if (edge - firm < 1) expect(Math.abs(edge - defined)).toBeLessThan(1);
      else expect(defined).toBeGreaterThan(firm - 0.5);
      // The independent samples: level with the road inside the edge, well below it beyond.
      for (const { runM, fallM } of point.falls) {
        if (runM < edge - 1) expect(fallM).toBeLessThan(0.6);
        if (runM > edge + 8) expect(fallM).toBeGreaterThan(1.2);
      }
    }
  });

  it('both lines give the same edges at the ten points', () => {
    for (const point of points) {
      const [a, b] = [mapped, corrected].map(({ bench, ground }) => {
        const { x, y } = ground.plane.toLocal(point);
        const i = nearestStation(bench, x, y);
        const az = (point.azimuthDeg * Math.PI) / 180;
        const right = Math.sin(az) * bench.normalX[i] + Math.cos(az) * bench.normalY[i] > 0;
        const side = right ? bench.right : bench.left;
        return Math.abs(side.edgeOffsetM[i] - bench.shiftM[i]);
      });
      expect(Math.abs(a - b)).toBeLessThan(1);
    }
    // Most shoulders there are sharp: calling them soft would dodge the test above.
    const { left, right } = corrected.bench;
    const soft = (side: Bench['left']): number =>
      side.edgeOffsetM.filter((edge, i) => side.kind[i] === KIND.drop && Math.abs(edge - side.firmOffsetM[i]) > 1)
        .length;
    const drops = (side: Bench['left']): number => side.kind.filter((kind) => kind === KIND.drop).length;
    expect((soft(left) + soft(right)) / (drops(left) + drops(right))).toBeLessThan(0.2);
  });

  it('no drop is told where the ground falls less than 1.2 m within 25 m of the road', () => {
    let level = 0;
    for (const { bench, ground } of [mapped, corrected]) {
      for (let i = 0; i < bench.count; i++) {
        for (const [sign, side] of [[-1, bench.left] as const, [1, bench.right] as const]) {
          if (fallWithin(ground, bench, i, sign, 25) >= 1.2) continue;
          level++;
          expect(side.kind[i]).not.toBe(KIND.drop);
        }
      }
    }
    expect(level).toBeGreaterThan(500);
  });
});

const lineFile = (which: string): string => `derived_centerline_${which}_wgs84.geojson`;

async function measure(which: 'original' | 'corrected'): Promise<Measured> {
  const roads = indexRoads(readRoads(readFileSync(join(folder!, lineFile(which)), 'utf8'), which));
  const line = roads.network.ways[0].line;
  const middle = { lon: line[(line.length >> 2) * 2], lat: line[(line.length >> 2) * 2 + 1] };
  const place = roadAt(roads, middle);
  if (!place.ok) throw place.error;
  const { route } = place.value;
  const plane = localPlane(middle);
  const source = await openElevation(fileSource(join(folder!, 'j5gr_dtm.tif')), {});
  const ground = await readGround([source], plane, { x: 0, y: 0 }, 700);
  await source.close();
  const half = route.lengthM / 2;
  const input = benchInput(roads, route, ground, [], defaultSetbacks, half, half);
  return { ground, bench: findBench(input, 0, route.lengthM) };
}

function roadPoints(from: string) {
  const [, ...rows] = readFileSync(join(from, 'derived_j5gr_road_points.csv'), 'utf8').trim().split('\n');
  return rows.map((row) => {
    const cells = row.split(',');
    const falls = [5, 10, 15, 20].map((runM, k) => ({ runM, fallM: -Number(cells[10 + k]) }));
    return { id: cells[0], lon: Number(cells[6]), lat: Number(cells[7]), azimuthDeg: Number(cells[9]), falls };
  });
}

/** Edge by its definition from the point farthest above the chord between the road and the ground 12 m out. */
function definedEdge(zAt: (q: number) => number): number {
  let start = 1;
  let most = Number.NEGATIVE_INFINITY;
  for (let q = 1; q <= 11; q += 0.25) {
    const over = zAt(q) - (zAt(0) + ((zAt(12) - zAt(0)) * q) / 12);
    if (over > most) [most, start] = [over, q];
  }
  let edge = start;
  for (let round = 0; round < 12; round++) {
    const bench = repeatedMedian(zAt, edge - 5, edge - 0.5);
    const slope = repeatedMedian(zAt, edge + 0.5, edge + 4);
    const met = (slope.z0 - bench.z0 - slope.b * (edge + 0.5) + bench.b * (edge - 5)) / (bench.b - slope.b);
    edge = Math.min(start + 1.5, Math.max(start - 1.5, (edge + met) / 2));
  }
  return edge;
}

function nearestStation({ x, y, shiftM, normalX, normalY, count }: Bench, px: number, py: number): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < count; i++) {
    const d = Math.hypot(x[i] + shiftM[i] * normalX[i] - px, y[i] + shiftM[i] * normalY[i] - py);
    if (d < least) [least, best] = [d, i];
  }
  return best;
}

/** Deepest ground below the middle of the road within a distance to one side, metres. */
function fallWithin(ground: Ground, { x, y, shiftM, normalX, normalY }: Bench, i: number, sign: number, runM: number) {
  const at = (q: number): number =>
    heightAt(ground, x[i] + (shiftM[i] + sign * q) * normalX[i], y[i] + (shiftM[i] + sign * q) * normalY[i]);
  const road = at(0);
  let deepest = 0;
  for (let q = 1; q <= runM; q++) deepest = Math.max(deepest, road - at(q));
  return deepest;
}

function distanceTo(line: Float64Array, px: number, py: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k + 3 < line.length; k += 2) {
    const [dx, dy] = [line[k + 2] - line[k], line[k + 3] - line[k + 1]];
    const t = Math.min(1, Math.max(0, ((px - line[k]) * dx + (py - line[k + 1]) * dy) / (dx * dx + dy * dy)));
    least = Math.min(least, Math.hypot(line[k] + t * dx - px, line[k + 1] + t * dy - py));
  }
  return least;
}
