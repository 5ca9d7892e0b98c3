// Screenshots of the survey and the study, desk and phone, light and night, into node_modules/.cache/brinkbook/shots.
// node config/run.mjs tests/browser/survey-study-shots.ts [word in the name]
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { type RunningApp, root, startApp } from './app.ts';
import { launchChromium } from './chromium.ts';
import { desk, mapDrawn, openPage, phone, sentenceLike } from './page.ts';

const folder = process.env.SHOTS ?? join(root, 'node_modules/.cache/brinkbook/shots');
mkdirSync(folder, { recursive: true });

interface Shot {
  readonly name: string;
  readonly hash: string;
  act?(page: Page): Promise<void>;
}

const why = async (page: Page): Promise<void> =>
  page.locator('.layout-row .figure-key', { hasText: 'reset' }).first().click();
const shots: readonly Shot[] = [
  { name: 'survey', hash: '#/survey' },
  { name: 'survey-site', hash: '#/survey/kettle-bend' },
  { name: 'study', hash: '#/study/kettle-bend' },
  { name: 'study-why', hash: '#/study/kettle-bend', act: why },
  { name: 'study-high', hash: '#/study/barrier-reach' },
  { name: 'own-files', hash: '#/open' },
];
const drawers: readonly Shot[] = ['half', 'full'].map((name, i) => ({
  name: `study-${name}`,
  hash: '#/study/kettle-bend',
  async act(page) {
    for (let k = 0; k <= i; k++) await page.locator('.drawer-handle').click();
    await page.waitForTimeout(250);
  },
}));

const wanted = process.argv[2] ?? '';
const app: RunningApp = await startApp();
const browser = await launchChromium();
for (const [size, options] of [
  ['desk', desk],
  ['phone', phone],
] as const) {
  for (const light of ['light', 'dark'] as const) {
    for (const { name, hash, act } of size === 'phone' ? [...shots, ...drawers] : shots) {
      const file = `${name}-${size}-${light === 'dark' ? 'night' : 'light'}.png`;
      if (!file.includes(wanted)) continue;
      const watched = await openPage(browser, `${app.url}/${hash}`, { ...options, colorScheme: light });
      const { page } = watched;
      await sentenceLike(page, /Plan as|No |on the ground|Open your own|Technical/);
      await mapDrawn(page);
      if (hash === '#/survey') await page.waitForTimeout(6000);
      await act?.(page);
      await page.waitForTimeout(300);
      await page.screenshot({ path: join(folder, file) });
      console.log(file, watched.complaints.join(' | '));
      await watched.close();
    }
  }
}
await browser.close();
await app.stop();
