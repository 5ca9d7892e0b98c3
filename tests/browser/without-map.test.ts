import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { appInChromium } from './app-in-chromium.ts';
import { auditByDayAndNight, smallTargets } from './audit.ts';
import { bookReady } from './book-page.ts';
import { withoutChromium } from './chromium.ts';
import { mapDrawn, openPage, phone, pointAt, sentenceLike, smallDesk } from './page.ts';

const patient = { timeout: 20_000 };

describe.skipIf(withoutChromium())('without a map', () => {
  const here = appInChromium();
  const why = (page: Page) => page.locator('.map-gone');
  const dropIn = (page: Page) =>
    page.evaluate(() => {
      const files = new DataTransfer();
      files.items.add(new File(['x'], 'county.tif'));
      const drop = new DragEvent('drop', { dataTransfer: files, bubbles: true, cancelable: true });
      document.querySelector('.map-gone')!.dispatchEvent(drop);
    });

  test('a browser without WebGL says so in the place of the map; list, place, study, plan, check and book are there', async () => {
    const { page, complaints, close } = await openPage(here.browser, `${here.url}/#/`, smallDesk);
    await why(page).getByText('This browser draws no map, it gives no WebGL 2').waitFor();
    expect(await why(page).textContent()).toMatch(/The list, every study with its plan view.* book and print/);
    await page.getByText('Pick one, or look a place up by its coordinates.').waitFor({ timeout: 30_000 });
    // Nothing is put where nobody sees it.
    await page.keyboard.press('t');
    await page.locator('.map-flag', { hasText: 'There is no map to tap on' }).waitFor();
    await page.getByRole('searchbox').fill('43.99952, -128.01562');
    await page.getByRole('button', { name: /^Go to 43\.9995/ }).click();
    await sentenceLike(page, /Plan as/);
    await page.getByRole('button', { name: 'keep it as a site' }).click();
    await page.waitForFunction(() => /#\/survey\/site-/.test(location.hash));
    await page.getByRole('button', { name: 'all sites' }).click();
    await sentenceLike(page, /21 sites/);
    await page.keyboard.press('Control+z');
    await sentenceLike(page, /20 sites/);
    await page.getByRole('searchbox').fill('');

    await page.getByRole('button', { name: /Kettle Bend/ }).click();
    await page.getByRole('link', { name: 'Study', exact: true }).click();
    await sentenceLike(page, /Plan as/);
    await page.getByTestId('plan').locator('svg.pair-drawing').waitFor();
    await page.getByRole('button', { name: 'map', exact: true }).click();
    await page.goto(`${here.url}/#/check/kettle-bend`);
    await page.locator('.check-work').waitFor();
    await page.goto(`${here.url}/#/book`);
    await bookReady(page);
    await page.goto(`${here.url}/#/study/kettle-bend`);
    await page.reload();
    await sentenceLike(page, /Plan as/);
    await page.getByRole('button', { name: 'map', exact: true }).click();
    await page.getByRole('button', { name: 'Try the map again' }).click();
    await why(page).getByText('it gives no WebGL 2').waitFor();
    await dropIn(page);
    await page.waitForFunction(() => location.hash.startsWith('#/open'));
    expect(complaints).toEqual([]);
    await close();
  }, 120_000);

  test('on a phone what is said there can be read and touched', async () => {
    const { page, complaints, close } = await openPage(here.browser, `${here.url}/#/survey/kettle-bend`, phone);
    await why(page).waitFor();
    await sentenceLike(page, /Plan as/);
    expect(await auditByDayAndNight(page)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
    await page.getByRole('button', { name: 'place', exact: true }).click();
    await page.locator('.map-flag', { hasText: 'There is no map to tap on' }).waitFor();
    expect(complaints).toEqual([]);
    await close();
  }, 90_000);

  test('a map that the device takes away comes back by itself as it was; taken away again, when it is asked for', async () => {
    const needs = { map: 'there' } as const;
    const watched = await openPage(here.browser, `${here.url}/#/study/kettle-bend`, smallDesk, needs);
    const { page, complaints, close } = watched;
    await sentenceLike(page, /Plan as/);
    await page.getByRole('button', { name: 'map', exact: true }).click();
    // The map comes closer when the study is whole.
    await page.locator('.notes-top:not([data-draft])[aria-busy=false]').waitFor();
    await mapDrawn(page);
    const before = await pointAt(page);
    const take = () =>
      page.evaluate(() => {
        const canvas = document.querySelector<HTMLCanvasElement>('.maplibregl-canvas')!;
        canvas.dataset.old = 'yes';
        canvas.getContext('webgl2')!.getExtension('WEBGL_lose_context')!.loseContext();
      });
    await take();
    await why(page).getByText('This device took the drawing of the map away. It comes back in a moment.').waitFor();
    await page.locator('.maplibregl-canvas:not([data-old])').waitFor();
    await mapDrawn(page);
    expect(await why(page).count()).toBe(0);
    await expect.poll(() => pointAt(page), patient).toEqual(before);
    expect(await page.locator('.map-notices').count()).toBe(1);

    await take();
    await why(page)
      .getByText(/^This device took the drawing of the map away\.$/)
      .waitFor();
    await page.waitForTimeout(1_000);
    expect(await page.locator('.maplibregl-canvas').count()).toBe(0);
    await page.getByRole('button', { name: 'Try the map again' }).click();
    await mapDrawn(page);
    await page.locator('.study-point').waitFor();
    expect(complaints).toEqual([]);
    await close();
  }, 90_000);
});
