import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { appInChromium } from './app-in-chromium.ts';
import { auditByDayAndNight, smallTargets } from './audit.ts';
import { withoutChromium } from './chromium.ts';
import { openPage, phone, pointAt, sentenceLike, smallDesk } from './page.ts';

describe.skipIf(withoutChromium())('what opens on the screens', () => {
  const here = appInChromium();

  const raise = async (page: Page): Promise<void> => {
    const handle = page.locator('.drawer-handle');
    if (!(await handle.isVisible())) return;
    while ((await page.locator('.notes').getAttribute('data-drawer')) !== 'full') await handle.click();
    await page.waitForTimeout(250);
  };

  test.each([
    ['desk', smallDesk],
    ['phone', phone],
  ] as const)(
    'axe finds nothing by day or night, and on a phone nothing is small to touch: %s',
    async (size, options) => {
      const needs = { map: 'there' } as const;
      const watched = await openPage(here.browser, `${here.url}/#/survey/kettle-bend`, options, needs);
      const { page, complaints, close } = watched;
      const sound = async (what: string): Promise<void> => {
        expect(await auditByDayAndNight(page), what).toEqual([]);
        if (size === 'phone') expect(await smallTargets(page), what).toEqual([]);
      };
      await sentenceLike(page, /Plan as/);
      await sound('a site');
      // Where to go with it is in sight at once, on a phone above the caution however long the sentence.
      const foot = (await page.locator('.caution').boundingBox())!.y;
      for (const name of ['Study', 'Roadside check', 'all sites']) {
        const key = (await page.locator('.site-keys').getByRole('button', { name }).boundingBox())!;
        expect(key.y + key.height, name).toBeLessThanOrEqual(foot);
      }
      await page.locator('.study-point').first().waitFor();
      const { x, y } = await pointAt(page);
      const put = async (key: string): Promise<void> => {
        await page.locator('.maplibregl-canvas').focus();
        await page.keyboard.press(key);
        if (key !== 'v') await page.mouse.click(x - 50, y + 40);
      };
      await put('t');
      const panel = page.getByRole('region', { name: 'Mark: tree' });
      await panel.waitFor();
      // Its head and first field are in sight as soon as it is there.
      const field = (await panel.getByLabel('Trunk, in').boundingBox())!;
      expect((await panel.boundingBox())!.y).toBeGreaterThanOrEqual(0);
      expect(field.y + field.height).toBeLessThanOrEqual(foot);
      await sound('a mark in hand');
      await page.keyboard.press('Escape');
      await put('z');
      await page.getByRole('region', { name: 'Place: Landing zone' }).waitFor({ state: 'attached' });
      await sound('a landing zone in hand');
      await page.keyboard.press('Escape');
      await put('v');
      await page.locator('.flag-fields').waitFor();
      await sound('the spot tool');

      for (const [hash, words] of [
        ['#/survey', /sites on/],
        ['#/open', /Open your own/],
        ['#/study/tender-verge', /Plan as/],
      ] as const) {
        await page.goto(`${here.url}/${hash}`);
        await sentenceLike(page, words);
        await sound(hash);
      }
      await raise(page);
      await page.getByRole('button', { name: 'tap to enter' }).first().click();
      for (const block of await page.locator('.key-list summary').all()) await block.click();
      await sound('a reading being entered, sharing, the keys');
      // The notes scroll in their own place: focus far down must not push the page about them out of sight.
      await page.locator('.notes-body input').last().focus();
      const pushed = () =>
        document.querySelector('.notes')!.scrollHeight - document.querySelector('.notes')!.clientHeight;
      expect(await page.evaluate(pushed)).toBeLessThanOrEqual(1);
      await page.locator('.layout-row .figure-key', { hasText: 'reset' }).first().click();
      await sound('why');
      await page.goto(`${here.url}/#/study/barrier-reach`);
      await sentenceLike(page, /Plan as high/);
      await page.locator('.technical summary').click();
      await sound('a high site, its layouts open');
      await page.goto(`${here.url}/#/study/level-acre`);
      await sentenceLike(page, /No drop edge/);
      // Whatever is opened is read from its sentence on.
      expect(await page.locator('.notes-scroll').evaluate((element) => element.scrollTop)).toBe(0);
      await sound('no drop edge');
      expect(complaints).toEqual([]);
      await close();
    },
    180_000,
  );
});
