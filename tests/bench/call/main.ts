import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { parsePosition } from '../../../src/geo/index.ts';
import { siteIndex, understand } from '../../../src/ui/call/search/index.ts';
import { callServer } from '../../browser/call-server.ts';
import { chromiumArguments, chromiumPath, withoutChromium } from '../../browser/chromium.ts';
import { phone } from '../../browser/page.ts';
import { madePack, manySites } from '../../ui/call/sites.ts';
import { sideBySide, span } from '../harness.ts';

/** The call view's two promises: node config/run.mjs tests/bench/call/main.ts */
const RUNS = 5;
const THROTTLE = 4;
const SITES = 5000;
const DONE = 'painted after ';
const print = (line: string): void => console.log(line);

async function search(): Promise<void> {
  const sites = manySites(SITES);
  const index = siteIndex(sites);
  const pack = { ...madePack, sites };
  const queries = ['kettle', 'ketle bend', 'lantern 4.5', 'split oak turn', '43.99, -128.01', 'copper quarry 1234'];
  const ask = (text: string) => understand(text, { pack, index, readPosition: (words) => parsePosition(words) });
  const { scan, typed } = await sideBySide(20, {
    scan: () => queries.reduce((sum, text) => sum + sites.filter(({ name }) => name.includes(text)).length, 0),
    typed: () => queries.reduce((sum, text) => sum + ask(text).length, 0),
  });
  const each = { min: typed.min / queries.length, max: typed.max / queries.length };
  print(
    `search, ${SITES} sites: ${span(each)} ms a text, ${(typed.min / scan.min).toFixed(0)} × a plain scan of the names`,
  );
}

/** Milliseconds from the start of the page to a site's plan and to its plan sheet; the text is typed as soon as there is a box. */
async function coldStart(): Promise<void> {
  if (withoutChromium()) return;
  const folder = mkdtempSync(join(tmpdir(), 'brinkbook-call-bench-'));
  const server = await callServer(join(folder, 'app'));
  const device = () =>
    chromium.launchPersistentContext(join(folder, 'profile'), {
      executablePath: chromiumPath()!,
      // Among them: no pages of an address bar, which an installed app's window does not have.
      args: [...chromiumArguments],
      ...phone,
    });
  let context = await device();
  const first = await context.newPage();
  await first.goto(`${server.url}/call/`);
  await first.getByText('Kept on this device: app, 3 of 3 sites').waitFor({ timeout: 120_000 });
  await context.close();
  await server.stop();
  for (const throttle of [1, THROTTLE]) {
    const plans: number[] = [];
    const sheets: number[] = [];
    for (let run = -1; run < RUNS; run++) {
      context = await device();
      const page = await context.newPage();
      await (await context.newCDPSession(page)).send('Emulation.setCPUThrottlingRate', { rate: throttle });
      await page.addInitScript(findKettleBend, DONE);
      // The page says when it is done: asking it would take of its time.
      const said = page.waitForEvent('console', { predicate: (one) => one.text().startsWith(DONE), timeout: 60_000 });
      await page.goto(`${server.url}/call/`);
      const [planAt, sheetAt] = (await said).text().slice(DONE.length).split(' ').map(Number) as [number, number];
      // The first start after keeping is the warm-up.
      if (run >= 0) {
        plans.push(planAt);
        sheets.push(sheetAt);
      }
      await context.close();
    }
    const spread = (times: readonly number[]): string => span({ min: Math.min(...times), max: Math.max(...times) });
    print(
      `cold start without a network to a searched site's plan, CPU ${throttle} × slower: ${spread(plans)} ms; its plan sheet, ` +
        `asked for as soon as the plan is there: ${spread(sheets)} ms, ${RUNS} starts`,
    );
  }
  rmSync(folder, { recursive: true, force: true });
}

/** Runs in the page before anything else: types, takes the first result, says when the plan and then its sheet have been painted. */
function findKettleBend(done: string): void {
  let planAt = 0;
  let asked = false;
  const look = (): void => {
    const box = document.querySelector<HTMLInputElement>('.box input');
    const hit = document.querySelector<HTMLElement>('.hits button');
    if (document.querySelector('[data-testid=sheet] svg')) {
      requestAnimationFrame(() => console.log(`${done}${planAt} ${performance.now()}`));
      return;
    }
    if (document.querySelector('.plan .class') && !asked) {
      asked = true;
      requestAnimationFrame(() => {
        planAt = performance.now();
        const keys = [...document.querySelectorAll<HTMLElement>('button')];
        keys.find(({ textContent }) => textContent === 'Plan sheet')?.click();
      });
    } else if (hit) hit.click();
    else if (box && document.querySelector('.site') && box.value === '') {
      box.value = 'ketle bend';
      box.dispatchEvent(new Event('input', { bubbles: true }));
    }
    requestAnimationFrame(look);
  };
  addEventListener('DOMContentLoaded', look);
}

print(`${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} threads, Node ${process.version}`);
await search();
await coldStart();
