// Dragging the study's point in the built app: event to painted panel, and the study's own time in its worker.
// node config/run.mjs tests/bench/drag/main.ts
import { readFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { root, startApp } from '../../browser/app.ts';
import { chromiumPath, launchChromium } from '../../browser/chromium.ts';
import { desk, mapDrawn, openPage, pointAt, sentenceLike } from '../../browser/page.ts';

const WARM_UP = 10;
const MOVES = 60;

/** Smallest, middle, 95th hundredth and largest of a list of milliseconds. */
function spread(ms: readonly number[]): string {
  const sorted = [...ms].sort((a, b) => a - b);
  const at = (share: number): string =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!.toFixed(0);
  return `min ${at(0)}, p50 ${at(0.5)}, p95 ${at(0.95)}, max ${at(1)} ms of ${ms.length}`;
}

if (!chromiumPath()) {
  console.log('No Chromium (CHROMIUM_PATH, or chromium on the PATH): nothing measured.');
  process.exit(0);
}
const app = await startApp();
const browser = await launchChromium();
try {
  await measure();
} finally {
  await browser.close();
  await app.stop();
}

async function measure(): Promise<void> {
  const { sites } = JSON.parse(readFileSync(join(root, 'data/demo/sites.json'), 'utf8'));
  const { lon, lat, side } = sites.find(({ id }: { id: string }) => id === 'kettle-bend');
  const { page } = await openPage(browser, `${app.url}/#/study/${lon},${lat},${side}`, desk);
  await sentenceLike(page, /Plan as/);
  await mapDrawn(page);
  const { x, y } = await pointAt(page);
  await page.evaluate(() => {
    const times: number[] = [];
    const studies: number[] = [];
    let moved = 0;
    addEventListener(
      'pointermove',
      (event) => {
        moved = event.timeStamp;
      },
      true,
    );
    new MutationObserver(() => {
      const from = moved;
      // A task after the next frame's callback runs when that frame has been painted.
      requestAnimationFrame(() => setTimeout(() => times.push(performance.now() - from), 0));
      studies.push(Number(document.querySelector<HTMLElement>('.notes-top')?.dataset.tookMs));
    }).observe(document.querySelector('.profile-paper')!, { childList: true });
    Object.assign(window, { dragTimes: times, studyTimes: studies });
  });
  await page.mouse.move(x, y);
  await page.mouse.down();
  // One move at a time, each waited for: the way of one event from finger to paint.
  for (let i = 1; i <= WARM_UP + MOVES; i++) {
    // To and fro along the road, more than a station at each move, so that every move has its own picture.
    const along = 5 * Math.abs((i % 30) - 15) + 5;
    const before = await page.evaluate(() => (window as unknown as { dragTimes: number[] }).dragTimes.length);
    await page.mouse.move(x + along, y - along / 6);
    await page.waitForFunction((n) => (window as unknown as { dragTimes: number[] }).dragTimes.length > n, before);
  }
  const single = await page.evaluate(() => {
    const { dragTimes, studyTimes } = window as unknown as { dragTimes: number[]; studyTimes: number[] };
    return { drag: dragTimes.splice(0), study: studyTimes.splice(0) };
  });
  // As fast as a hand: 60 moves a second for two seconds; how many pictures come of them?
  const began = performance.now();
  for (let i = 0; performance.now() - began < 2000; i++) {
    await page.mouse.move(x + 84 - (i % 84), y - 14);
    await page.waitForTimeout(16);
  }
  const pictures = await page.evaluate(() => (window as unknown as { dragTimes: number[] }).dragTimes.length);
  await page.mouse.up();

  console.log(`${cpus()[0]?.model}, ${cpus().length} cores, node ${process.version}, software renderer`);
  console.log(`event to painted panel, one move at a time: ${spread(single.drag.slice(WARM_UP))}`);
  console.log(`study in its worker:                        ${spread(single.study.slice(WARM_UP))}`);
  console.log(`dragging without pause: ${(pictures / 2).toFixed(1)} pictures a second`);
}
