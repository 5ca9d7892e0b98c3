import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Feature, LineString } from 'geojson';
import { beforeAll, describe, expect, test } from 'vitest';
import { defaultAngleRule } from '../../src/book/index.ts';
import { geodesicM, localPlane } from '../../src/geo/index.ts';
import { indexRoads, type RoadNetwork } from '../../src/road/index.ts';
import { studyFunctions } from '../../src/workers/index.ts';
import { roadStretches, thinLine } from '../../src/workers/roadside/index.ts';
import { demoSite } from '../helpers/demo-book.ts';
import { fileOpener } from '../helpers/file-opener.ts';

const demo = (name: string): string => join(fileURLToPath(new URL('../../data/demo/', import.meta.url)), name);
const opener = fileOpener();
const files = {
  elevation: [demo('elevation-1m.tif'), demo('elevation-10m.tif')],
  options: {},
  roads: demo('roads.geojson'),
  marks: null,
};
const never = new AbortController().signal;
const rank = ['low', 'steep', 'high'];

describe('the roadside along a road', () => {
  const functions = studyFunctions(opener, async (rgba, size) => ({ rgba, size }));
  let site: { lon: number; lat: number };
  let features: Feature[];
  let key: string;
  let view: { west: number; east: number; south: number; north: number };

  beforeAll(async () => {
    await functions.open(files, never);
    site = (await demoSite('kettle-bend')).place;
    view = { west: site.lon - 0.004, east: site.lon + 0.004, south: site.lat - 0.003, north: site.lat + 0.003 };
    const found = await functions.stretches(view, never);
    const { toLocal } = localPlane(site);
    const far = (at: { lon: number; lat: number }): number => Math.hypot(toLocal(at).x, toLocal(at).y);
    key = found.sort((a, b) => far(a.middle) - far(b.middle))[0]!.key;
    features = await functions.roadside({ key, rule: defaultAngleRule }, never);
  });

  test('the class at either end of a piece is never gentler than a study of that place', async () => {
    const band = features.filter(({ properties }) => properties!.what === 'band');
    expect(band.length).toBeGreaterThan(2);
    let asked = 0;
    // A study takes its time; every other piece will do.
    for (const { geometry, properties } of band.filter((_, i) => i % 2 === 0).slice(0, 4)) {
      const line = (geometry as LineString).coordinates;
      for (const [lon, lat] of [line[0]!, line.at(-1)!]) {
        const at = { lon: lon!, lat: lat! };
        const { study } = await functions.study(
          { at, side: 'of the point', rule: defaultAngleRule, units: 'us' },
          never,
        );
        if (!study.angle) continue;
        asked++;
        const drawn = rank.indexOf(properties!.look.replace('undecided-', ''));
        expect(drawn, `${at.lon}, ${at.lat}`).toBeGreaterThanOrEqual(rank.indexOf(study.angle.planAs));
      }
    }
    expect(asked).toBeGreaterThan(5);
  });

  test('the right side of every line is the outer one: a descent begins on the line and goes to its right', async () => {
    const band = features.filter(({ properties }) => properties!.what === 'band');
    for (const { geometry } of [band[0]!, band.at(-1)!]) {
      const line = (geometry as LineString).coordinates;
      const [lon, lat] = line[0]!;
      const at = { lon: lon!, lat: lat! };
      const { study } = await functions.study({ at, side: 'of the point', rule: defaultAngleRule, units: 'us' }, never);
      const { toLocal } = localPlane(at);
      const [next, end] = [toLocal({ lon: line.at(-1)![0]!, lat: line.at(-1)![1]! }), toLocal(study.descent!.end)];
      expect(next.x * end.y - next.y * end.x).toBeLessThan(0);
    }
  });

  test('pieces follow one another along the drop edge without a gap', () => {
    const length = (what: (properties: Record<string, unknown>) => boolean): number =>
      features
        .filter(({ properties }) => what(properties!))
        .reduce((sum, { geometry }) => {
          const line = (geometry as LineString).coordinates;
          return (
            sum +
            line.slice(1).reduce((metres, [lon, lat], i) => {
              const [lonBefore, latBefore] = line[i]!;
              return metres + geodesicM({ lon: lon!, lat: lat! }, { lon: lonBefore!, lat: latBefore! });
            }, 0)
          );
        }, 0);
    const drops = length(({ what, kind }) => what === 'edge' && kind === 'drop');
    expect(drops).toBeGreaterThan(50);
    // Lines are thinned within 0.15 m, each for itself.
    expect(length(({ what }) => what === 'band') / drops).toBeCloseTo(1, 2);
  });

  test('tiles are answered while a roadside is read, and a reading can be given up', async () => {
    const found = await functions.stretches(view, never);
    const other = found.find((one) => one.key !== key)!;
    const order: string[] = [];
    const abort = new AbortController();
    const reading = functions.roadside({ key: other.key, rule: defaultAngleRule }, abort.signal).then(
      () => order.push('roadside'),
      (error: Error) => order.push(error.name),
    );
    await functions.groundTile({ z: 12, x: 591, y: 1480 }, never);
    order.push('tile');
    abort.abort();
    await reading;
    expect(order).toEqual(['tile', 'AbortError']);
    expect((await functions.roadside({ key: other.key, rule: defaultAngleRule }, never)).length).toBeGreaterThan(0);
  });

  test('a read stretch is kept, for each rule by itself', async () => {
    expect(await functions.roadside({ key, rule: defaultAngleRule }, never)).toBe(features);
    const rule = { ...defaultAngleRule, lowMaxDeg: 35, highMinDeg: 60 };
    const other = await functions.roadside({ key, rule }, never);
    const highs = (list: Feature[]): number => list.filter(({ properties }) => /high/.test(properties!.look)).length;
    expect(highs(features)).toBeGreaterThan(highs(other));
  });
});

test('every way belongs to one route, and its stretches cover it once', () => {
  const item = (id: string, ...points: [number, number][]) => ({
    id,
    name: null,
    line: Float64Array.from(points.flat()),
    tags: { highway: 'unclassified' },
  });
  const ways = [
    item('a', [-128, 44], [-127.99, 44]),
    item('b', [-127.98, 44.01], [-127.99, 44]),
    item('c', [-128, 44.1], [-127.9995, 44.1]),
  ];
  const stretches = roadStretches(indexRoads({ ways, features: [] } as unknown as RoadNetwork));
  const lengthOf = (line: Float64Array): number =>
    geodesicM({ lon: line[0]!, lat: line[1]! }, { lon: line[2]!, lat: line[3]! });
  const whole = ways.reduce((sum, { line }) => sum + lengthOf(line), 0);
  const covered = stretches.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0);
  expect(covered).toBeCloseTo(whole, 6);
  expect(Math.max(...stretches.map(({ fromM, toM }) => toM - fromM))).toBeLessThanOrEqual(200);
  expect(stretches.filter(({ fromM }) => fromM === 0).length).toBe(2);
});

test('a thinned line stays within its tolerance and keeps its ends', () => {
  const count = 200;
  const line = new Float64Array(2 * count);
  for (let i = 0; i < count; i++) {
    line[2 * i] = -128 + i * 1.2e-5;
    line[2 * i + 1] = 44 + 4e-5 * Math.sin(i / 20);
  }
  const thin = thinLine(line, 0.15);
  expect(thin.length).toBeLessThan(40);
  expect(thin[0]).toEqual([line[0], line[1]]);
  expect(thin.at(-1)).toEqual([line.at(-2), line.at(-1)]);
  const { toLocal } = localPlane({ lon: -128, lat: 44 });
  const points = thin.map(([lon, lat]) => toLocal({ lon: lon!, lat: lat! }));
  for (let i = 0; i < count; i++) {
    const { x, y } = toLocal({ lon: line[2 * i]!, lat: line[2 * i + 1]! });
    const off = points.slice(1).map((b, k) => {
      const a = points[k]!;
      const length = Math.hypot(b.x - a.x, b.y - a.y);
      const t = Math.min(1, Math.max(0, ((x - a.x) * (b.x - a.x) + (y - a.y) * (b.y - a.y)) / length ** 2));
      return Math.hypot(x - a.x - t * (b.x - a.x), y - a.y - t * (b.y - a.y));
    });
    expect(Math.min(...off)).toBeLessThan(0.1502);
  }
});
