import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { root } from '../../browser/app.ts';
import { desk, mapDrawn, sentenceLike } from '../../browser/page.ts';
import { spread } from './spread.ts';

const SITES = 5000;
const WORDS = ['kettle', 'ladle 12', 'lantern creek', 'nothing such', '499'];

/** Opens the survey with 5,000 sites; prints what a search takes and the longest task of a long scroll. */
export async function measureList(browser: Browser, url: string): Promise<void> {
  const list = JSON.parse(readFileSync(join(root, 'data/demo/sites.json'), 'utf8'));
  const sites = Array.from({ length: SITES }, (_, i) => {
    const site = list.sites[i % list.sites.length];
    return { ...site, id: `${site.id}-${i}`, name: `${site.name} ${i}`, lon: site.lon + 1e-7 * i };
  });
  const context = await browser.newContext(desk);
  const page = await context.newPage();
  await page.route('**/demo/sites.json', (route) => route.fulfill({ json: { ...list, sites } }));
  await page.goto(`${url}/#/survey`);
  await sentenceLike(page, /5,000 sites/, 60_000);
  await page.locator('.site-row').first().waitFor();
  await mapDrawn(page).catch(() => console.log('  (the map was still drawing)'));
  const search: number[] = [];
  for (const word of WORDS) {
    for (const text of [word, '']) {
      search.push(
        await page.evaluate(async (typed) => {
          const field = document.getElementById('site-search') as HTMLInputElement;
          const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')!.set!;
          const began = performance.now();
          set.call(field, typed);
          field.dispatchEvent(new Event('input', { bubbles: true }));
          // A typed letter is drawn in the microtasks after its event; whatever else waits comes later.
          for (let i = 0; i < 5; i++) await Promise.resolve();
          const shown = document.querySelector('.site-table ul, .list-empty')?.getAttribute('aria-label');
          if (typed === '' && !shown?.startsWith('5000')) throw new Error(`The list was not drawn: ${shown}.`);
          return performance.now() - began;
        }, text),
      );
    }
  }
  const scrolled = await page.evaluate(async () => {
    const box = document.querySelector('.site-table')!;
    const tasks: number[] = [];
    for (let i = 0; i < 120; i++) {
      const began = performance.now();
      box.scrollTop += 400;
      box.dispatchEvent(new Event('scroll'));
      await new Promise<void>((resolve) => {
        const next = new MessageChannel();
        next.port1.onmessage = () => resolve();
        next.port2.postMessage(null);
      });
      tasks.push(performance.now() - began);
      await new Promise((resolve) => setTimeout(resolve, 8));
    }
    return tasks;
  });
  console.log(`a list of ${SITES} sites`);
  console.log(`  search, filter, sort and draw: ${spread(search)}`);
  console.log(`  task of one scroll step:       ${spread(scrolled)}`);
  await context.close();
}
