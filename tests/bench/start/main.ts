// From the first byte to a demo that can be used, a cold browser each time: node config/run.mjs tests/bench/start/main.ts
import { cpus, loadavg } from 'node:os';
import { startApp } from '../../browser/app.ts';
import { chromiumArguments, chromiumPath, launchChromium } from '../../browser/chromium.ts';
import { desk, phone } from '../../browser/page.ts';
import { span } from '../harness.ts';

const RUNS = 5;
const DONE = 'started ';

if (!chromiumPath()) {
  console.log('No Chromium (CHROMIUM_PATH, or chromium on the PATH): nothing measured.');
  process.exit(0);
}
const app = await startApp();
try {
  console.log(
    `${cpus()[0]?.model}, ${cpus().length} cores, node ${process.version}, software renderer, load ${loadavg()[0]!.toFixed(1)}`,
  );
  for (const [name, screen] of [
    ['desk', desk],
    ['phone', phone],
  ] as const) {
    const times: Started[] = [];
    for (let run = 0; run < RUNS; run++) {
      const browser = await launchChromium(chromiumArguments);
      const page = await (await browser.newContext(screen)).newPage();
      await page.addInitScript(tell, DONE);
      const said = page.waitForEvent('console', { predicate: (one) => one.text().startsWith(DONE), timeout: 120_000 });
      await page.goto(app.url);
      times.push(JSON.parse((await said).text().slice(DONE.length)));
      await browser.close();
    }
    const of = (part: keyof Started): string => {
      const all = times.map((one) => one[part]);
      return span({ min: Math.min(...all), max: Math.max(...all) });
    };
    console.log(
      `${name}, ${RUNS} cold starts, ms from the navigation: first paint ${of('paint')}, the list of sites answers ${of('list')}, ` +
        `a site of it asked for at once has its study ${of('study')}, the map is drawn ${of('map')}`,
    );
  }
} finally {
  await app.stop();
}

/** Milliseconds from the navigation. */
interface Started {
  paint: number;
  list: number;
  study: number;
  /** First time that the map stood still. */
  map: number;
}

/** Runs in the page before anything else: notes what is there, asks for a study as soon as the list is, says when all has been painted. */
function tell(done: string): void {
  const at: Partial<Started> = {};
  const look = (): void => {
    const now = performance.now();
    at.paint ??= performance.getEntriesByName('first-contentful-paint')[0]?.startTime;
    if (at.list === undefined && document.querySelector('.site-row')) {
      at.list = now;
      location.hash = '/study/kettle-bend';
    }
    if (document.querySelector('.map-view[data-drawn=yes]')) at.map ??= now;
    if (/Plan as/.test(document.querySelector('.sentence')?.textContent ?? '')) at.study ??= now;
    if (at.paint !== undefined && at.map !== undefined && at.study !== undefined) {
      console.log(`${done}${JSON.stringify(at)}`);
      return;
    }
    requestAnimationFrame(look);
  };
  addEventListener('DOMContentLoaded', look);
}
