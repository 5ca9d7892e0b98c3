import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fromFile } from 'geotiff';
import { beforeAll, describe, expect, it } from 'vitest';
import { hardPlaces, type Place } from '../../seeds/key/place.ts';
import { markKinds } from '../../src/book/index.ts';

const root = join(import.meta.dirname, '../..');
const demo = join(root, 'data/demo');
const json = (name: string) => JSON.parse(readFileSync(join(demo, name), 'utf8'));

interface Samples {
  readonly data: Float32Array;
  readonly width: number;
  readonly height: number;
}

const decoded = new Map<string, Promise<Samples>>();
const samples = (name: string): Promise<Samples> => {
  if (!decoded.has(name)) decoded.set(name, decode(name));
  return decoded.get(name)!;
};

async function decode(name: string): Promise<Samples> {
  const tiff = await fromFile(join(demo, name));
  const image = await tiff.getImage();
  const [data] = (await image.readRasters()) as unknown as Float32Array[];
  tiff.close();
  return { data, width: image.getWidth(), height: image.getHeight() };
}

beforeAll(() => {
  if (!existsSync(demo)) throw new Error('data/demo is missing; run `npm run demo` first (`npm test` does).');
});

describe('the demo district', () => {
  it('is the same ground everywhere: samples rounded to a millimetre have the committed hashes', async () => {
    const committed = readFileSync(join(root, 'data/demo.sha256'), 'utf8').trim().split('\n');
    expect(committed).toHaveLength(3);
    for (const line of committed) {
      const [sum, name] = line.split(/\s+/);
      const { data } = await samples(name);
      const millimetres = Int32Array.from(data, (z) => (z === -9999 ? -2147483648 : Math.round(z * 1000)));
      expect(createHash('sha256').update(new Uint8Array(millimetres.buffer)).digest('hex'), name).toBe(sum);
    }
  });

  it('has error of 0.05 m on its 1 m heights, and no spike in its truth', async () => {
    const data = await samples('elevation-1m.tif');
    const truth = await samples('truth-1m.tif');
    const { width, height } = truth;
    expect(width).toBeGreaterThanOrEqual(4000);
    expect(height).toBeGreaterThanOrEqual(3000);
    let squares = 0;
    let count = 0;
    let cells = 0;
    let spike = 0;
    for (let r = 1; r < height - 1; r += 3) {
      for (let c = 1; c < width - 1; c += 3) {
        const i = r * width + c;
        const error = data.data[i] - truth.data[i];
        if (data.data[i] === -9999) continue;
        cells++;
        if (Math.abs(error) < 0.3) {
          squares += error * error;
          count++;
        }
        const z = truth.data;
        const around = [i - 1, i + 1, i - width, i + width].map((k) => z[k]);
        spike = Math.max(spike, z[i] - Math.max(...around), Math.min(...around) - z[i]);
      }
    }
    // The trench and the thin returns are the cells over six sigma.
    expect(count).toBeGreaterThan(0.999 * cells);
    expect(cells).toBeGreaterThan(1_300_000);
    expect(Math.sqrt(squares / count)).toBeCloseTo(0.05, 3);
    expect(spike).toBeLessThan(0.5);
  });

  it('has natural slopes with waves of 0.06 to 0.13 m at 3 to 10 m', async () => {
    const { data, width } = await samples('truth-1m.tif');
    const found: number[] = [];
    for (let r = 1600; r < 2800; r += 40) {
      for (let c = 2600; c < 3900; c += 40) found.push(unevenness(data, width, c, r));
    }
    found.sort((a, b) => a - b);
    expect(found[Math.floor(found.length / 2)]).toBeGreaterThan(0.06);
    expect(found[Math.floor(found.length / 2)]).toBeLessThan(0.13);
    expect(found[Math.floor(found.length * 0.98)]).toBeGreaterThan(0.15);
  });
});

/** Rms about a quadratic surface over 11 × 11 cells, metres: what is left of waves up to about 10 m. */
function unevenness(z: Float32Array, width: number, c0: number, r0: number): number {
  const reach = 5;
  const terms = (x: number, y: number) => [1, x, y, x * x, x * y, y * y];
  const a = Array.from({ length: 6 }, () => new Float64Array(7));
  for (let y = -reach; y <= reach; y++) {
    for (let x = -reach; x <= reach; x++) {
      const t = terms(x, y);
      for (let i = 0; i < 6; i++) {
        for (let j = 0; j < 6; j++) a[i][j] += t[i] * t[j];
        a[i][6] += t[i] * z[(r0 + y) * width + c0 + x];
      }
    }
  }
  for (let k = 0; k < 6; k++) {
    for (let i = 0; i < 6; i++) {
      if (i === k) continue;
      const factor = a[i][k] / a[k][k];
      for (let j = k; j < 7; j++) a[i][j] -= factor * a[k][j];
    }
  }
  let squares = 0;
  for (let y = -reach; y <= reach; y++) {
    for (let x = -reach; x <= reach; x++) {
      const fit = terms(x, y).reduce((sum, t, i) => sum + (t * a[i][6]) / a[i][i], 0);
      squares += (z[(r0 + y) * width + c0 + x] - fit) ** 2;
    }
  }
  return Math.sqrt(squares / (2 * reach + 1) ** 2);
}

describe('its answer key', () => {
  const key = () =>
    json('key.json').roads as { key: string; name: string; columns: Record<string, (string | number | null)[]> }[];
  const sides = ['left', 'right'] as const;
  const drops = () =>
    key().flatMap(({ columns }) =>
      sides.flatMap((side) =>
        columns.x
          .map((_, i) => ({
            place: columns[`${side}.place`][i] as Place,
            slope: columns[`${side}.slope`][i] as string,
            angle: columns[`${side}.governingDeg`][i] as number | null,
            kind: columns[`${side}.kind`][i] as string,
          }))
          .filter(({ kind }) => kind === 'drop'),
      ),
    );

  it('covers every metre of three roads, hard places under 15 %', () => {
    expect(key().map(({ name }) => name)).toEqual(['Lantern Creek Road', 'Cinder Grade Road', 'Old Quarry Spur']);
    const all = drops();
    expect(all.length).toBeGreaterThan(6000);
    const hard = all.filter(({ place }) => hardPlaces.includes(place));
    expect(hard.length / all.length).toBeLessThan(0.15);
    for (const place of hardPlaces) expect(hard.filter((row) => row.place === place).length, place).toBeGreaterThan(60);
  });

  it('has enough stations in every class, near every limit and of every kind of slope', () => {
    const easy = drops().filter(({ place, angle }) => place === 'easy' && angle !== null);
    const within = (from: number, to: number) => easy.filter(({ angle }) => angle! >= from && angle! < to).length;
    expect(within(18, 30)).toBeGreaterThan(400);
    expect(within(30, 45)).toBeGreaterThan(1500);
    expect(within(45, 60)).toBeGreaterThan(800);
    for (const limit of [30, 45]) {
      expect(within(limit, limit + 3)).toBeGreaterThan(200);
      for (const below of [2, 4, 6]) expect(within(limit - below - 1, limit - below + 1)).toBeGreaterThan(60);
    }
    for (const kind of ['natural', 'plane', 'two', 'three', 'convex', 'concave', 'S', 'bench', 'rough', 'wall']) {
      expect(easy.filter(({ slope }) => slope === kind).length, kind).toBeGreaterThan(60);
    }
  });

  it('knows flat ground, cuts, and each place that the recipe names', () => {
    const rows = key().flatMap(({ columns }) =>
      sides.flatMap((side) => columns[`${side}.place`].map((place, i) => [place, columns[`${side}.kind`][i]])),
    );
    for (const kind of ['flat', 'cut', 'bank'])
      expect(rows.filter((row) => row[1] === kind).length).toBeGreaterThan(100);
    const places = new Set(rows.map(([place]) => place));
    for (const place of ['bridge', 'culvert', 'divided', 'through-fill', 'retaining wall', 'switchback', 'mouth']) {
      expect(places.has(place), place).toBe(true);
    }
  });

  it('has lines drawn up to 1.6 m off, and one about 4 m', () => {
    for (const { key: road, columns } of key()) {
      const off = (columns.lineOffsetM as number[]).map(Math.abs).sort((a, b) => a - b);
      const share = (limit: number) => off.filter((d) => d > limit).length / off.length;
      if (road === 'quarry') expect(share(2.5)).toBeGreaterThan(0.4);
      else expect(share(1.9)).toBeLessThan(0.01);
      expect(share(0.5)).toBeGreaterThan(0.3);
    }
  });
});

describe('its book', () => {
  it('holds sites of different character, and marks of known kinds', () => {
    const { sites } = json('sites.json');
    expect(sites.length).toBeGreaterThanOrEqual(14);
    expect(new Set(sites.map((site: { character: string }) => site.character)).size).toBe(sites.length);
    for (const { properties } of json('marks.geojson').features) expect(markKinds).toContain(properties.kind);
  });

  it('lies in the open Pacific', () => {
    for (const { lon, lat } of [...json('sites.json').sites, ...json('stations.json').stations]) {
      expect(Math.abs(lon + 128)).toBeLessThan(0.05);
      expect(Math.abs(lat - 44)).toBeLessThan(0.03);
    }
  });

  it('has roads with bridge, guardrail, retaining wall, creek, trail and power line', () => {
    const tags = json('roads.geojson').features.map((f: { properties: Record<string, string> }) => f.properties);
    const has = (name: string, value: string) => tags.some((t: Record<string, string>) => t[name] === value);
    expect(has('bridge', 'yes') && has('oneway', 'yes') && has('waterway', 'stream')).toBe(true);
    expect(has('barrier', 'guard_rail') && has('barrier', 'retaining_wall')).toBe(true);
    expect(has('power', 'line') && has('highway', 'path')).toBe(true);
  });

  it('says where it comes from with no word that promises too much', () => {
    for (const name of ['sites.json', 'marks.geojson', 'drills.json', 'response.json']) {
      expect(readFileSync(join(demo, name), 'utf8')).not.toMatch(/\b(safe|adequate|approved)\b/i);
    }
  });
});
