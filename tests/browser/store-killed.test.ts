import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/units/index.ts';
import { scratch } from '../helpers/gdal.ts';
import { chromiumPath, withoutChromium } from './chromium.ts';
import { type StoreServer, serveStorePage } from './store-server.ts';

const KILLS = 100;
const folder = scratch();

interface Held {
  held: { id: string; label: string }[];
  blobs: string[];
}

interface EditReport {
  acknowledged: { id: string; label: string; blob: string | null } | null;
  begun: string;
}

/** A Chromium of one profile at an address; nothing but the page speaks to the test. */
function start(url: string): ChildProcess {
  const flags = ['--headless', '--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'];
  flags.push(
    '--disable-component-update',
    '--disable-sync',
    '--disable-extensions',
    `--user-data-dir=${folder.path('profile')}`,
  );
  return spawn(chromiumPath()!, [...flags, `${url}#edit`], { stdio: 'ignore', detached: true });
}

/** Kills the browser that this test started, with its children, as a dying battery would; resolves when it is gone. */
const kill = (browser: ChildProcess): Promise<void> =>
  new Promise((done) => {
    browser.once('exit', () => done());
    process.kill(-browser.pid!, 'SIGKILL');
  });

describe.skipIf(withoutChromium())('a browser that is killed while somebody edits', () => {
  let server: StoreServer;
  let running: ChildProcess | null = null;
  beforeAll(async () => {
    mkdirSync(folder.path('profile'));
    server = await serveStorePage(folder.path('built'));
  }, 60_000);
  afterAll(async () => {
    if (running) await kill(running);
    server?.close();
    folder.remove();
  });

  it(`${KILLS} times has every acknowledged edit after its restart, with its photo`, async () => {
    const random = seededRandom(11);
    const acknowledged = new Map<string, { label: string; blob: string | null }>();
    let begun: string | null = null;
    let opened: (held: Held) => void = () => undefined;
    let enough: () => void = () => undefined;
    let left = 0;
    server.onReport = (path, body) => {
      if (path === '/opened') opened(body as Held);
      if (path !== '/edit') return;
      const report = body as EditReport;
      begun = report.begun;
      if (!report.acknowledged) return;
      acknowledged.set(report.acknowledged.id, report.acknowledged);
      left -= 1;
      if (left <= 0) enough();
    };
    const counts = { inFlight: 0, undone: 0 };
    for (let kills = 0; kills <= KILLS; kills++) {
      const held = await new Promise<Held>((resolve, reject) => {
        opened = resolve;
        running = start(server.url);
        running.once('error', reject);
      });
      const labels = new Map(held.held.map(({ id, label }) => [id, label]));
      const missing = [...acknowledged].filter(([id, { label }]) => labels.get(id) !== label);
      const photos = new Set(held.blobs);
      const lost = [...acknowledged.values()].filter(({ blob }) => blob !== null && !photos.has(blob));
      expect({ kills, missing, lost }).toEqual({ kills, missing: [], lost: [] });
      const there = new Set(held.held.map(({ label }) => label));
      // The page tells of an edit before it begins it: the last one told was on its way, or on the point of it, when the kill came.
      if (begun !== null) counts.inFlight += 1;
      if (begun !== null && !there.has(begun)) counts.undone += 1;
      if (kills === KILLS) break;
      begun = null;
      left = 5 + Math.floor(random.next() * 8);
      await new Promise<void>((done) => {
        enough = done;
      });
      await new Promise((done) => setTimeout(done, random.next() * 12));
      await kill(running!);
      running = null;
    }
    console.log(
      `${KILLS} kills: ${acknowledged.size} acknowledged edits seen, 0 missing; ${counts.inFlight} kills with a write in flight, ${counts.undone} of them with a write that was undone.`,
    );
    expect(acknowledged.size).toBeGreaterThanOrEqual(500);
    expect(counts.inFlight).toBeGreaterThanOrEqual(30);
  }, 240_000);
});
