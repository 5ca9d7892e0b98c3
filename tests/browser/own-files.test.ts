import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { makePmtiles } from '../helpers/make-pmtiles.ts';
import { makePng } from '../helpers/make-png.ts';
import { root } from './app.ts';
import { appInChromium } from './app-in-chromium.ts';
import { withoutChromium } from './chromium.ts';
import { onePage } from './one-page.ts';
import { openPage, sentenceLike, smallDesk } from './page.ts';

const demo = (name: string): string => join(root, 'data/demo', name);

describe.skipIf(withoutChromium())('own files', () => {
  const here = appInChromium();
  /** Where files are dropped on the map, or another map is put under it. */
  const onMap = onePage(here, smallDesk, { map: 'there' });

  const head = (page: Page) => page.locator('.head').textContent();
  const demoOpen = (page: Page) => expect.poll(() => head(page), { timeout: 30_000 }).toContain('invented');
  const ownOpen = (page: Page) => expect.poll(() => head(page), { timeout: 30_000 }).toContain('elevation-10m.tif');

  test('are kept on the device, open again after a reload, are removed and brought back', async () => {
    const { page, strayRequests, close } = await openPage(here.browser, `${here.url}/#/open`, smallDesk);
    await demoOpen(page);
    const kept = page.getByRole('region', { name: 'Kept on this device' });
    await kept.getByText('Nothing yet.').waitFor();
    await page.setInputFiles('input[name=elevation]', demo('elevation-10m.tif'));
    await page.setInputFiles('input[name=roads]', demo('roads.geojson'));
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await ownOpen(page);

    await page.goto(`${here.url}/#/open`);
    await page.reload();
    await ownOpen(page);
    const row = kept.getByRole('listitem');
    expect(await row.textContent()).toMatch(/^elevation-10m\.tif2 files, 1\.\d MBremove$/);
    expect(await kept.textContent()).toMatch(/Brinkbook uses \d+\.\d MB of \d+ GB/);
    await kept.getByRole('button', { name: 'Remove elevation-10m.tif' }).click();
    await kept.getByText('is removed.').waitFor();
    expect(await row.count()).toBe(0);
    await kept.getByRole('button', { name: 'undo' }).click();
    await row.getByRole('button', { name: 'elevation-10m.tif', exact: true }).click();
    await ownOpen(page);
    // What was opened last opens by itself where the address says, until somebody goes back to the demo.
    await page.goto(`${here.url}/#/study/-128.0157,43.9998`);
    await page.reload();
    await ownOpen(page);
    await sentenceLike(page, /Lantern Creek|screening|Screening|Plan as|No drop|Not computed/);
    expect(page.url()).toContain('#/study/');
    await page.goto(`${here.url}/#/open`);
    await page.getByRole('button', { name: 'back to the demo district' }).click();
    await demoOpen(page);
    await page.reload();
    await demoOpen(page);
    // Files that are gone are told of, and the demo stands in.
    await page.goto(`${here.url}/#/open`);
    await row.getByRole('button', { name: 'elevation-10m.tif', exact: true }).click();
    await ownOpen(page);
    await page.evaluate(async () =>
      (await navigator.storage.getDirectory()).removeEntry('kept-files', { recursive: true }),
    );
    await page.goto(`${here.url}/#/survey`);
    await page.reload();
    await demoOpen(page);
    await page.getByText('elevation-10m.tif could not be opened, the demo is shown in its place.').waitFor();
    expect(strayRequests).toEqual([]);
    await close();
  }, 120_000);

  test('are what the call view shows once they are kept, under their own name, until the demo is asked for there', async () => {
    const { page, strayRequests, close } = await openPage(here.browser, `${here.url}/#/open`, smallDesk);
    await demoOpen(page);
    await page.setInputFiles('input[name=elevation]', demo('elevation-10m.tif'));
    await page.setInputFiles('input[name=roads]', demo('roads.geojson'));
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await ownOpen(page);
    const call = await page.context().newPage();
    await call.goto(`${here.url}/call/#at=43.99952,-128.01562,8`);
    await call.locator('.edges li').first().waitFor({ timeout: 60_000 });
    await call.getByRole('button', { name: 'All sites' }).click();
    await call.getByRole('heading', { name: 'elevation-10m.tif' }).waitFor({ timeout: 30_000 });
    expect(await call.getByText('invented').count()).toBe(0);
    await call.getByText('0 of 0 sites with their studies, the elevation files').waitFor({ timeout: 30_000 });

    await page.goto(`${here.url}/#/open`);
    await page.getByText('elevation-10m.tif opens by itself on this device, here and in the call view.').waitFor();
    await page.getByRole('button', { name: 'the demo instead' }).click();
    await demoOpen(page);
    await call.reload();
    await call.getByRole('heading', { name: 'Tamarrow Fire District' }).waitFor({ timeout: 60_000 });
    await call.getByText('An invented district, for trying out.').waitFor();
    expect(await call.getByText('has cleared').count()).toBe(0);
    expect(strayRequests).toEqual([]);
    await close();
  }, 150_000);

  test('a raster is opened by its address; a host that the page may not ask is told, and what was open stays', async () => {
    const { page, close } = await openPage(here.browser, `${here.url}/#/open`, smallDesk);
    await demoOpen(page);
    const open = async (address: string): Promise<void> => {
      await page.locator('input[name=address]').fill(address);
      await page.setInputFiles('input[name=roads]', demo('roads.geojson'));
      await page.locator('input[name=keep]').setChecked(false);
      await page.getByRole('button', { name: 'Open', exact: true }).click();
    };
    await open('https://heights.invalid/county.tif');
    await sentenceLike(page, /county\.tif cannot be reached.*Tamarrow Fire District stays open/);
    await open(`${here.url}/demo/elevation-10m.tif`);
    await ownOpen(page);
    await close();
  }, 120_000);

  test('dropped on the map, they are in the form', async () => {
    const page = await onMap('#/');
    await demoOpen(page);
    await page.waitForSelector('.map-view canvas');
    await page.evaluate(() => {
      const files = new DataTransfer();
      files.items.add(new File(['x'], 'county.tif'));
      files.items.add(new File(['{}'], 'county-roads.geojson'));
      const drop = new DragEvent('drop', { dataTransfer: files, bubbles: true, cancelable: true });
      document.querySelector('.map-view')!.dispatchEvent(drop);
    });
    await page.waitForFunction(() => location.hash.startsWith('#/open'));
    const names = () =>
      page.evaluate(() =>
        [...document.querySelectorAll<HTMLInputElement>('.open-form:not([aria-label]) input[type=file]')].map(
          ({ files }) => files?.[0]?.name,
        ),
      );
    await expect.poll(names, { timeout: 20_000 }).toEqual(['county.tif', 'county-roads.geojson', undefined]);
    // What cannot be read is told; nothing of it stays open.
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await sentenceLike(page, /county\.tif .*stays open/);
    await page.getByRole('region', { name: 'Kept on this device' }).getByText('Nothing yet.').waitFor();
  }, 120_000);

  test('a map of a file is put under the own one and taken away; an address without its maker is asked for him', async () => {
    const page = await onMap('#/open');
    await demoOpen(page);
    const form = page.getByRole('form', { name: 'A map under it' });
    const file = Buffer.from(makePmtiles(makePng(256, [90, 120, 90]), { attribution: 'Held at the station' }));
    await form.locator('input[name=file]').setInputFiles({ name: 'county.pmtiles', mimeType: '', buffer: file });
    await form.getByRole('button', { name: 'show it' }).click();
    const attribution = page.locator('.map-attribution');
    await expect.poll(() => attribution.textContent()).toContain('Held at the station');
    await form.getByRole('button', { name: 'take it away' }).click();
    await expect.poll(() => attribution.textContent()).not.toContain('Held');
    await form.locator('select').selectOption('raster');
    await form.locator('input[name=url]').fill('/tiles/{z}/{x}/{y}.png');
    await form.getByRole('button', { name: 'show it' }).click();
    await page.locator('.map-notices', { hasText: 'Say whose map it is' }).waitFor();
  }, 120_000);

  test('a GeoTIFF dropped on the map is opened and studied; one that breaks off says so and what was open stays', async () => {
    const page = await onMap('#/survey');
    await demoOpen(page);
    await page.waitForSelector('.map-view canvas');
    /** Drops the demo's coarse elevation and its roads, the elevation cut to its first bytes where `most` says so. */
    const drop = (most?: number) =>
      page.evaluate(async (bytes) => {
        const files = new DataTransfer();
        for (const name of ['elevation-10m.tif', 'roads.geojson']) {
          const whole = await (await fetch(`/demo/${name}`)).arrayBuffer();
          files.items.add(new File([name.endsWith('tif') ? whole.slice(0, bytes) : whole], name));
        }
        const event = new DragEvent('drop', { dataTransfer: files, bubbles: true, cancelable: true });
        document.querySelector('.map-view')!.dispatchEvent(event);
      }, most);
    const openIt = async (least: number, most: number): Promise<void> => {
      await page.waitForFunction(() => location.hash.startsWith('#/open'));
      const size = () =>
        page.evaluate(
          () => document.querySelector<HTMLInputElement>('input[name=elevation]')?.files?.[0]?.size ?? Number.NaN,
        );
      await expect.poll(async () => (await size()) >= least && (await size()) <= most, { timeout: 20_000 }).toBe(true);
      await page.getByRole('button', { name: 'Open', exact: true }).click();
    };
    await drop(200);
    await openIt(200, 200);
    await sentenceLike(page, /elevation-10m\.tif .*Tamarrow Fire District stays open/);
    // Its directory is whole, its heights are not.
    await drop(20_000);
    await openIt(20_000, 20_000);
    await sentenceLike(
      page,
      /elevation-10m\.tif ends at byte 20000 where its directory promises \d+: it is cut off; copy or download it again\. Tamarrow Fire District stays open/,
    );
    await drop();
    await openIt(1_000_000, 9_000_000);
    await ownOpen(page);
    await page.goto(`${here.url}/#/study/-128.0157212,43.9998178,right`);
    await sentenceLike(page, /Screening only.*Plan as/);
  }, 120_000);
});
