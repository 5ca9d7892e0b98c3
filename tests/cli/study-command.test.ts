import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import proj4 from 'proj4';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { main } from '../../src/cli/main.ts';
import { writeGeoTiff } from '../../src/io/node/index.ts';
import type { Study } from '../../src/study/index.ts';

/** A north–south road on a bench at 44° N, 128° W: the ground falls at 35° to the east, from 4 m off the line, for 40 m. */
const utm = proj4('+proj=longlat +datum=WGS84', '+proj=utm +zone=9 +datum=WGS84');
const [X, Y] = utm.forward([-128, 44]) as [number, number];
const SIZE = 700;
const lonLat = (dx: number, dy: number) => utm.inverse([X + dx, Y + dy]) as [number, number];
const at = lonLat(3, 0).join(',');

let folder = '';
let dem = '';
let roads = '';
let wall = '';

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'brinkbook-'));
  dem = join(folder, 'dem.tif');
  roads = join(folder, 'roads.geojson');
  const data = new Float32Array(SIZE * SIZE);
  for (let row = 0; row < SIZE; row++) {
    for (let col = 0; col < SIZE; col++) {
      const dx = col - SIZE / 2 + 0.5;
      data[row * SIZE + col] = dx > 4 ? 500 - Math.min(dx - 4, 40) * 0.7 : dx < -4 ? 500 + (-dx - 4) * 0.5 : 500;
    }
  }
  const grid = { width: SIZE, height: SIZE, data, x0: X - SIZE / 2 + 0.5, y0: Y + SIZE / 2 - 0.5, stepX: 1, stepY: 1 };
  const metadata = { VERTICAL_RMSE_M: '0.05', TERRAIN_KIND: 'bare earth', COLLECTED_ON: '2023-06-18' };
  await writeGeoTiff(dem, grid, { epsg: 32609, noData: -9999, metadata });
  const coordinates = Array.from({ length: 27 }, (_, i) => lonLat(0, (i - 13) * 25));
  wall = join(folder, 'marks.geojson');
  const wallLine = { type: 'LineString', coordinates: [lonLat(14, -20), lonLat(14, 20)] };
  await writeFile(
    wall,
    JSON.stringify({
      type: 'FeatureCollection',
      features: [{ type: 'Feature', properties: { kind: 'wall', heightM: 3 }, geometry: wallLine }],
    }),
  );
  await writeFile(
    roads,
    JSON.stringify({
      type: 'FeatureCollection',
      features: [
        {
          type: 'Feature',
          properties: { highway: 'tertiary', name: 'Cinder Grade Road' },
          geometry: { type: 'LineString', coordinates },
        },
      ],
    }),
  );
});

afterAll(() => rm(folder, { recursive: true, force: true }));

/** Runs a command in this process; what it wrote and its exit code. */
async function run(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  let out = '';
  let err = '';
  const stdout = vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    out += text;
    return true;
  });
  const stderr = vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
    err += text;
    return true;
  });
  try {
    return { code: await main(args), out, err };
  } finally {
    stdout.mockRestore();
    stderr.mockRestore();
  }
}

const study = (...args: string[]) => run('study', '--elevation', dem, '--roads', roads, '--at', at, ...args);

describe('study, on the command line', () => {
  it('prints the study as JSON and nothing else', async () => {
    const { code, out, err } = await study('--json');
    expect([code, err]).toEqual([0, '']);
    const printed = JSON.parse(out) as Study;
    expect(printed.schema).toBe('brinkbook/study@1');
    expect(printed.site.side).toBe('right');
    expect(printed.terrain).toMatchObject({
      kind: 'bare earth',
      cellM: 1,
      verticalRmseM: 0.05,
      collectedOn: '2023-06-18',
    });
    expect(printed.angle!.governingDeg).toBeGreaterThan(34);
    expect(printed.angle!.governingDeg).toBeLessThan(36);
    expect(printed.edge!.offsetM).toBeCloseTo(4, 0);
  });

  it('prints text with the sentence first and the caution last', async () => {
    const { code, out } = await study();
    expect(code).toBe(0);
    expect(out).toMatch(/^Plan as steep: 35°/);
    expect(out).toMatch(/rope rescue needs trained,\s+equipped people\.\n$/);
    expect(out).not.toMatch(/\b(safe|adequate|approved)\b/i);
  });

  it('prints layouts with forces, rope against kits, people, ways, closure, arrivals, and the fleet that it took', async () => {
    const { out } = await study();
    for (const words of [
      /^Haul layouts$/m,
      /^ {3}hold .*\d of 3 needed/m,
      /^ {3}rope .*fits first arriving (yes|no|joined), first alarm/m,
      /^ {3}people .*raise \d+/m,
      /^Ways$/m,
      /^Closure /m,
      /^Arriving .*shipped fleet/m,
      /^Call$/m,
    ]) {
      expect(out).toMatch(words);
    }
  });

  it('takes conditions and patients into account, and refuses others', async () => {
    const read = async (...args: string[]) => JSON.parse((await study('--json', ...args)).out) as Study;
    const [fair, wet, two] = [await read(), await read('--conditions', 'wet,night'), await read('--patients', '2')];
    expect(wet.given.conditions).toEqual({ wet: true, ice: false, night: true, wind: false });
    expect(wet.layouts).not.toEqual(fair.layouts);
    expect(wet.angle).toEqual(fair.angle);
    expect(two.ways[0].minutes.from!).toBeGreaterThan(fair.ways[0].minutes.from!);
    expect((await study('--conditions', 'foggy')).code).toBe(2);
    expect((await study('--patients', '0')).code).toBe(2);
  });

  it('goes by what was read at the book’s site there, says who signed, and leaves other sites’ readings alone', async () => {
    const [lon, lat] = lonLat(3, 0);
    const site = (id: string, place: { lon: number; lat: number }) => ({
      ...{ id, name: id, place: { ...place, sideAzimuthDeg: 90 } },
    });
    const [otherLon, otherLat] = lonLat(3, 60);
    const reading = { siteId: 'here', reading: { quantity: 'angleDeg', value: 52 }, by: 'A. Vale', on: '2026-05-01' };
    const signed = { siteId: 'here', by: 'R. Marsh', role: 'captain', on: '2026-05-02', method: 'walked' };
    const bookFile = join(folder, 'read.json');
    await writeFile(
      bookFile,
      JSON.stringify({
        schema: 'brinkbook/book@1',
        tables: {
          sites: [site('here', { lon, lat }), site('there', { lon: otherLon, lat: otherLat })],
          measurements: [{ id: 'm1', tool: 'inclinometer', ...reading }],
          signOffs: [{ id: 'o1', ...signed }],
        },
        contested: [],
        madeFrom: [],
      }),
    );
    const told = (await study('--book', bookFile)).out;
    expect(told).toContain('Plan as high: 52° measured');
    expect(told).toMatch(/52°.*\[measured\]/);
    expect(told).toContain('Measured 52°');
    expect(told.replace(/\s+/gu, ' ')).toContain('Field check: R. Marsh, captain, 2026-05-02, walked');
    const away = (
      await run('study', '--elevation', dem, '--roads', roads, '--at', `${otherLon},${otherLat}`, '--book', bookFile)
    ).out;
    expect(away).not.toContain('measured');
    expect(away).toContain('not field-verified');
    const opposite = (await study('--side', 'left', '--book', bookFile)).out;
    expect(opposite).not.toContain('measured');
    expect(opposite).toContain('not field-verified');
  });

  it('takes fleet, kit, arrivals and calls from a book, and refuses what is none', async () => {
    const printed = JSON.parse((await study('--json', '--book', 'data/demo/tamarrow.brinkbook')).out) as Study;
    expect(printed.given.resources).toBe('book');
    expect(printed.arriving[0]).toMatchObject({ unit: 'Engine 2', atMin: 0 });
    expect(printed.warnings.some(({ code }) => code === 'default-fleet')).toBe(false);
    const { code, out, err } = await study('--book', dem);
    expect([code, out]).toEqual([1, '']);
    expect(err.trim().split('\n')).toHaveLength(1);
  });

  it('keeps layouts planned as high for the technical team, without minutes and people', async () => {
    const { out } = await study('--rule', '30/45', '--patient', lonLat(24, 0).join(','), '--marks', wall);
    expect(out).toMatch(/^Technical rope team needed\./);
    const layouts = out.slice(out.indexOf('For the technical team'), out.indexOf('Closure '));
    expect(layouts).toMatch(/^ {3}hold /m);
    expect(layouts).not.toMatch(/people|haul team|minutes|\d min\b/);
    expect(out).not.toMatch(/\d+ pull\b|relief/);
    expect(out).not.toMatch(/^Ways$/m);
  });

  it('draws the study', async () => {
    const svg = join(folder, 'profile.svg');
    expect((await study('--svg', svg, '--units', 'metric')).code).toBe(0);
    expect(await readFile(svg, 'utf8')).toMatch(/^<svg .*<\/svg>$/s);
  });

  it('takes the side asked for, and says that it does not drop', async () => {
    const { code, out } = await study('--side', 'left');
    expect(code).toBe(0);
    expect(out).toMatch(/^No drop edge on the uphill side, west/);
  });

  it('accepts what the file says of itself again, and refuses what contradicts it, naming both', async () => {
    expect((await study('--crs', 'EPSG:32609', '--json')).code).toBe(0);
    const { code, out, err } = await study('--crs', 'EPSG:32610');
    expect([code, out]).toEqual([1, '']);
    expect(err).toMatch(/32609/);
    expect(err).toMatch(/32610/);
  });

  it.each([
    ['a point off the raster', ['--at', '-127,44'], /No road within 50 m|outside/],
    ['a point far from any road', ['--at', lonLat(200, 0).join(',')], /No road within 50 m/],
    ['a missing raster', ['--elevation', 'nowhere.tif'], /nowhere\.tif/],
    ['a missing road file', ['--roads', 'nowhere.json'], /nowhere\.json/],
    ['a swapped position', ['--at', '44,-128'], /longitude first/],
  ])('answers %s with one sentence and exit 1', async (_what, change, words) => {
    const args = ['--elevation', dem, '--roads', roads, '--at', at];
    for (let i = 0; i < change.length; i += 2) args[args.indexOf(change[i]) + 1] = change[i + 1];
    const { code, out, err } = await run('study', ...args);
    expect([code, out]).toEqual([1, '']);
    expect(err).toMatch(words);
    expect(err.trim().split('\n')).toHaveLength(1);
  });

  it('answers a broken raster and a broken road file with one sentence', async () => {
    const broken = join(folder, 'broken.tif');
    await writeFile(broken, (await readFile(dem)).subarray(0, 5000));
    const raster = await run('study', '--elevation', broken, '--roads', roads, '--at', at);
    expect(raster.code).toBe(1);
    expect(raster.err).toContain('broken.tif');
    const whole = await readFile(dem);
    await writeFile(broken, whole.subarray(0, whole.length - 1));
    const cut = await run('study', '--elevation', broken, '--roads', roads, '--at', at);
    expect(cut.code).toBe(raster.code);
    expect(cut.out).toBe('');
    expect(cut.err).toMatch(
      new RegExp(
        `broken\\.tif ends at byte ${whole.length - 1} where its directory promises ${whole.length}: it is cut off`,
      ),
    );
    await writeFile(join(folder, 'broken.json'), '{"type":');
    const road = await run('study', '--elevation', dem, '--roads', join(folder, 'broken.json'), '--at', at);
    expect([road.code, road.err.trim().split('\n').length]).toEqual([1, 1]);
  });

  it.each([
    [['study', '--nope'], /--nope/],
    [['study', '--elevation', 'x.tif'], /--roads is missing/],
    [['fly'], /no command/],
    [[], /^$/],
  ])('answers wrong usage %j with exit 2', async (args, words) => {
    const { code, err } = await run(...args);
    expect(code).toBe(2);
    expect(err).toMatch(words);
  });

  it('explains itself', async () => {
    const { code, out } = await run('study', '--help');
    expect(code).toBe(0);
    expect(out).toContain('--vertical-unit');
    expect((await run('--help')).out).toContain('study');
  });
});
