// A picture of every screen in each state, desk and phone, light and night, into node_modules/.cache/brinkbook/shots; under each
// name what axe finds, and on the phone what is too small to touch.
// node config/run.mjs tests/browser/shots/main.ts [words that the name has]
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions } from 'playwright-core';
import { root, startApp } from '../app.ts';
import { auditPage, smallTargets } from '../audit.ts';
import { chromiumArguments, launchChromium } from '../chromium.ts';
import { desk, openPage, phone, type WatchedPage } from '../page.ts';
import { type Shot, shots } from './states.ts';

const folder = process.env.SHOTS ?? join(root, 'node_modules/.cache/brinkbook/shots');
mkdirSync(folder, { recursive: true });
const words = process.argv.slice(2);
const app = await startApp();
const browser = await launchChromium(chromiumArguments);
for (const [size, options] of [
  ['desk', { ...desk, deviceScaleFactor: 1 }],
  ['phone', { ...phone, deviceScaleFactor: 2 }],
] as const) {
  for (const light of ['light', 'dark'] as const) {
    const wanted = shots
      .map((shot) => ({ shot, file: `${shot.name}-${size}-${light === 'dark' ? 'night' : 'light'}` }))
      .filter(({ file }) => words.every((word) => file.includes(word)));
    if (wanted.length > 0) await series(browser, wanted, { ...options, colorScheme: light });
  }
}
await browser.close();
await app.stop();
console.log(`Pictures are in ${folder}`);

/** Takes the pictures of one size and light. */
async function series(
  on: Browser,
  wanted: readonly { readonly shot: Shot; readonly file: string }[],
  options: BrowserContextOptions,
): Promise<void> {
  let shared: WatchedPage | null = null;
  for (const { shot, file } of wanted) {
    const address = `${app.url}/${shot.path}`;
    const watched: WatchedPage =
      shot.alone || !shared
        ? await openPage(on, address, options, { roadside: true, map: 'drawn', kept: true })
        : shared;
    if (!shot.alone) shared = watched;
    const found = await take(watched, shot, address, file, options.isMobile === true).catch((error) => [`${error}`]);
    console.log([file, ...watched.complaints.splice(0), ...found].join('\n  '));
    if (shot.alone) await watched.close();
  }
  await shared?.close();
}

async function take(
  { page }: WatchedPage,
  shot: Shot,
  address: string,
  file: string,
  touch: boolean,
): Promise<string[]> {
  // Started anew, so that no shot hangs on the one before.
  if (page.url() !== address || !shot.alone) {
    await page.goto('about:blank');
    await page.goto(address);
  }
  let found: string[] = [];
  try {
    await settle(page);
    await shot.act?.(page);
    await settle(page);
    found = [...(await auditPage(page)), ...(touch ? await smallTargets(page) : [])];
  } finally {
    await page.screenshot({ path: join(folder, `${file}.png`) });
  }
  return found;
}

/** Waits until sentence and map stand, where the screen has them. */
async function settle(page: WatchedPage['page']): Promise<void> {
  await page.waitForFunction(
    () => {
      const words = document.querySelector('[data-testid=sentence]')?.textContent ?? 'none here';
      const map = document.querySelector<HTMLElement>('.map-view');
      return !/^$|Opening|Reading/.test(words) && (!map || map.offsetWidth === 0 || map.dataset.drawn === 'yes');
    },
    null,
    { timeout: 60_000 },
  );
  await page.waitForTimeout(500);
}
