import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { main } from '../../src/cli/main.ts';
import { elementsOf, readSvg } from '../helpers/svg-reading.ts';

const demo = (name: string): string => join('data/demo', name);
const book = ['--book', demo('tamarrow.brinkbook')];
const ground = ['--elevation', demo('elevation-1m.tif'), '--elevation', demo('elevation-10m.tif')];
const roads = ['--roads', demo('roads.geojson')];

describe('plan command', () => {
  let folder = '';
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'brinkbook-plan-'));
  });
  afterAll(() => rm(folder, { recursive: true, force: true }));

  /** Exit code and what came on standard error. */
  async function run(...args: string[]): Promise<{ code: number; error: string; out: string }> {
    let [error, out] = ['', ''];
    const err = vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
      error += String(text);
      return true;
    });
    const std = vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
      out += String(text);
      return true;
    });
    try {
      return { code: await main(['plan', ...args]), error, out };
    } finally {
      err.mockRestore();
      std.mockRestore();
    }
  }

  it('writes a page with its card, alone in a file', async () => {
    const file = join(folder, 'kettle.html');
    const options = [...book, '--site', 'kettle-bend', ...ground, ...roads, '--address', 'https://fire.example/book'];
    expect((await run(...options, '--out', file)).code).toBe(0);
    const html = await readFile(file, 'utf8');
    expect(html.match(/<section class="page">/g)).toHaveLength(2);
    expect(html).toContain('Walked by prevention officer');
    expect(html).not.toMatch(/<script|https?:\/\/(?!www\.w3\.org)/);
    expect(html).toContain('@page { size: letter portrait; margin: 0 }');
  });

  it('writes front and card as two drawings', async () => {
    const file = join(folder, 'high.svg');
    const options = [...book, '--site', 'barrier-reach', ...ground, ...roads, '--paper', 'a4', '--units', 'metric'];
    expect((await run(...options, '--out', file)).code).toBe(0);
    const front = readSvg(await readFile(file, 'utf8'));
    expect(front.getAttribute('width')).toBe('210mm');
    const words = elementsOf(front, 'text').map(({ textContent }) => textContent);
    expect(words.join(' ')).toContain('Technical rope team needed.');
    expect(await readFile(join(folder, 'high-card.svg'), 'utf8')).toContain('Check card, Barrier Reach');
  });

  it('takes elevation and roads from the book where it lists them', async () => {
    const plain = {
      schema: 'brinkbook/book@1',
      tables: {
        sites: [
          { id: 's', name: 'Listed', place: { lon: -128.0148, lat: 43.9998, sideAzimuthDeg: 160 }, roadName: null },
        ],
        sources: [
          { id: 'e', name: 'heights', kind: 'elevation', address: demo('elevation-1m.tif') },
          { id: 'r', name: 'roads', kind: 'roads', address: demo('roads.geojson') },
        ],
      },
      contested: [],
      madeFrom: [],
    };
    const file = join(folder, 'plain.json');
    await writeFile(file, JSON.stringify(plain));
    const told = await run('--book', file, '--site', 's', '--out', join(folder, 'listed.html'));
    expect(told).toMatchObject({ code: 0, error: '' });
  });

  it.each([
    ['an unknown site', ['--site', 'nowhere'], 'x.html', 1, /has no site "nowhere"; give one of its sites, such as /],
    ['no site', [], 'x.html', 2, /--site is missing/],
    ['another ending', ['--site', 'kettle-bend'], 'x.pdf', 2, /neither \.html nor \.svg/],
    ['another paper', ['--site', 'kettle-bend', '--paper', 'a3'], 'x.html', 2, /--paper "a3" is not one of letter, a4/],
    ['two sites in a drawing', ['--site', 'kettle-bend', '--site', 'coin-toss'], 'x.svg', 2, /holds one site, but 2/],
    ['no web address', ['--site', 'kettle-bend', '--address', 'javascript:1'], 'x.html', 2, /is no web address/],
  ])('refuses %s in one sentence', async (_name, options, file, code, sentence) => {
    const told = await run(...book, ...options, ...ground, ...roads, '--out', join(folder, file));
    expect(told.code).toBe(code);
    expect(told.error).toMatch(sentence);
    expect(told.error.trim().split('\n')).toHaveLength(1);
    expect(told.out).toBe('');
  });

  it('says what is missing where neither the options nor the book name ground and roads', async () => {
    const told = await run(...book, '--site', 'kettle-bend', ...roads, '--out', join(folder, 'x.html'));
    expect(told).toMatchObject({ code: 2 });
    expect(told.error).toMatch(/--elevation is missing, and the book lists no elevation/);
  });
});
