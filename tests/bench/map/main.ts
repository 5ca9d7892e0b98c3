// Panning the map with 5,000 sites and without, by turns in one browser.
// node config/run.mjs tests/bench/map/main.ts
import { cpus } from 'node:os';
import type { Page } from 'playwright-core';
import { chromiumArguments, chromiumPath, launchChromium } from '../../browser/chromium.ts';
import { type MapPage, serveMapPage } from '../../browser/map/map-page.ts';

const SITES = 5000;
const FRAMES = 40;
const WARM_UP = 10;
const ROUNDS = 3;
const VIEWPORT = { width: 1000, height: 800 };
/** Where nearly all sites are in view as dots, where they are rings, and where those in view have names. */
const ZOOMS = [10.5, 12.3, 14, 15.5];

if (!chromiumPath()) {
  console.log('No Chromium (CHROMIUM_PATH, or chromium on the PATH): nothing measured.');
  process.exit(0);
}
const site = await serveMapPage();
const browser = await launchChromium(chromiumArguments);
try {
  await measure(site);
} finally {
  await browser.close();
  site.stop();
}

async function measure({ url }: MapPage): Promise<void> {
  const without = await open(`${url}?sites=0`);
  const withSites = await open(`${url}?sites=${SITES}`);
  console.log(`${cpus()[0]?.model}, ${cpus().length} cores, node ${process.version}, software renderer`);
  console.log(`pan frames of a ${VIEWPORT.width} × ${VIEWPORT.height} map, ms, least, median and 95th hundredth`);
  for (const zoom of ZOOMS) {
    const times: [number[], number[]] = [[], []];
    for (let round = 0; round < ROUNDS; round++) {
      times[0].push(...(await pan(without, zoom)));
      times[1].push(...(await pan(withSites, zoom)));
    }
    const [none, all] = times.map(spread) as [Spread, Spread];
    const ratio = all.median / none.median;
    console.log(
      `zoom ${zoom}: no sites ${words(none)}; ${SITES} sites ${words(all)}; median ratio ${ratio.toFixed(2)}`,
    );
  }
}

async function open(url: string): Promise<Page> {
  const page = await browser.newPage({ viewport: VIEWPORT });
  await page.goto(url);
  await page.evaluate(() => window.mapReady);
  await page.waitForSelector('.map-view[data-drawn=yes]', { timeout: 120_000 });
  return page;
}

/** Times of the frames of a pan to and fro, milliseconds, after a warm-up. */
async function pan(page: Page, zoom: number): Promise<number[]> {
  await page.bringToFront();
  await page.evaluate((to) => {
    const { west, east, south, north } = window.district.elevationBounds;
    const at = { lon: (west + east) / 2, lat: (south + north) / 2 };
    window.mapHandle.setLook({ at, zoom: to, bearingDeg: 0, pitchDeg: 0 });
  }, zoom);
  await page.waitForSelector('.map-view[data-drawn=yes]', { timeout: 120_000 });
  return page.evaluate(
    async ([frames, warmUp]) => {
      const frame = (): Promise<number> => new Promise((resolve) => requestAnimationFrame(resolve));
      const times: number[] = [];
      const start = window.mapHandle.look();
      let last = await frame();
      for (let i = 0; i < frames! + warmUp!; i++) {
        const shift = 0.0004 * Math.sin(i / 5) * 2 ** (13 - start.zoom);
        window.mapHandle.setLook({ ...start, at: { ...start.at, lon: start.at.lon + shift } });
        const now = await frame();
        if (i >= warmUp!) times.push(now - last);
        last = now;
      }
      return times;
    },
    [FRAMES, WARM_UP],
  );
}

interface Spread {
  readonly least: number;
  readonly median: number;
  readonly p95: number;
}

function spread(times: readonly number[]): Spread {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
  return { least: at(0), median: at(0.5), p95: at(0.95) };
}

function words({ least, median, p95 }: Spread): string {
  return `${least.toFixed(0)} ${median.toFixed(0)} ${p95.toFixed(0)}`;
}
