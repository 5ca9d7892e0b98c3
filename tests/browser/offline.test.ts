import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { chromium } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { type CallServer, callServer } from './call-server.ts';
import { chromiumPath, testArguments, withoutChromium } from './chromium.ts';
import { giveNoWebGl, phone } from './page.ts';

const folder = mkdtempSync(join(tmpdir(), 'brinkbook-offline-'));

let open: BrowserContext | null = null;

/** A browser with a profile of its own on the disk, as on a device: what it keeps outlives it. */
async function device(name: string): Promise<BrowserContext> {
  await open?.close();
  open = await chromium.launchPersistentContext(join(folder, name), {
    executablePath: chromiumPath()!,
    args: testArguments,
    ...phone,
  });
  await open.addInitScript(giveNoWebGl);
  return open;
}

const kept = (page: Page): Promise<unknown> =>
  page.waitForFunction(() => /Kept on this device: app, 3 of 3 sites/.test(document.body.textContent), null, {
    timeout: 90_000,
  });
const planOf = async (page: Page): Promise<string> => {
  await page.waitForSelector('.plan .class, .plan .stop-line', { timeout: 15_000 });
  return ((await page.getByTestId('sentence').textContent()) ?? '').replaceAll('\u00a0', ' ');
};

describe.skipIf(withoutChromium())('without a network', () => {
  let server: CallServer;
  beforeAll(async () => {
    server = await callServer(join(folder, 'app'));
  }, 240_000);
  afterEach(async () => {
    await open?.close();
    open = null;
  });
  afterAll(async () => {
    await server?.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  test('after one visit the app starts cold, finds a site, shows its plan, works it out anew, and reloads', async () => {
    let context = await device('one');
    let page = await context.newPage();
    await page.goto(`${server.url}/call/`);
    await kept(page);
    const site = `${server.url}/call/#site=kettle-bend`;
    await page.goto(site);
    const online = await planOf(page);
    expect(online).toMatch(/Plan as high/);
    await server.leave();
    try {
      context = await device('one');
      page = await context.newPage();
      const refused: string[] = [];
      page.on('console', (message) => {
        if (/content security policy/i.test(message.text())) refused.push(message.text());
      });
      await page.goto(`${server.url}/call/`);
      await page.getByLabel('Road and mile, site or position').fill('ketle bend');
      await page.locator('.hits button').first().click();
      expect(await planOf(page)).toBe(online);
      await page.getByRole('button', { name: 'Plan sheet' }).click();
      await page.getByTestId('sheet').locator('svg').first().waitFor();
      expect(await page.getByTestId('sheet').textContent()).toContain('Kettle Bend');
      // Night is not kept: the study is made here, from the elevation that is.
      await page.getByRole('button', { name: 'night' }).click();
      await expect.poll(() => page.getByTestId('sentence').textContent(), { timeout: 40_000 }).toMatch(/for night/);
      await page.reload();
      expect(await planOf(page)).toBe(online);
      // A road edge that nobody surveyed, below a site, and the desk itself.
      await page.goto(`${server.url}/call/#at=43.99952,-128.01562,8`);
      await page.getByText('Kettle Bend, south side').waitFor({ timeout: 30_000 });
      await page.goto(`${server.url}/#/study/-128.0157212,43.9998178,right`);
      await expect
        .poll(() => page.getByTestId('sentence').textContent(), { timeout: 40_000 })
        .toMatch(/^Plan as steep/);
      expect(refused).toEqual([]);
    } finally {
      await server.comeBack();
    }
  }, 240_000);

  test('a browser that has cleared its storage is told of, and the sites are kept again', async () => {
    const context = await device('one');
    const page = await context.newPage();
    await page.goto(`${server.url}/call/`);
    await kept(page);
    const wire = await context.newCDPSession(page);
    await wire.send('Storage.clearDataForOrigin', { origin: server.url, storageTypes: 'cache_storage' });
    await page.route('**/demo/book.sha256', (route) => route.abort());
    await page.reload();
    await page.getByText('This browser has cleared what was kept (3 sites of Tamarrow Fire District').waitFor();
    await page.unroute('**/demo/book.sha256');
    await page.reload();
    await kept(page);
    expect(await page.getByText('has cleared').count()).toBe(0);
  }, 180_000);

  test('a newer version waits: no window is interrupted, the other hears of it and keeps its own parts', async () => {
    const context = await device('one');
    const first = await context.newPage();
    const second = await context.newPage();
    for (const page of [first, second]) {
      await page.goto(`${server.url}/call/`);
      await kept(page);
      await page.evaluate(() => Object.assign(window, { stayed: true }));
    }
    // The search is loaded when something is typed: the second window has not asked for it yet.
    server.update(/\/assets\/search-[\w-]+\.js/);
    await first.evaluate(async () => (await navigator.serviceWorker.getRegistration())!.update());
    for (const page of [first, second]) {
      await page.getByText('A newer version is ready.').waitFor({ timeout: 30_000 });
      expect(await page.evaluate(() => 'stayed' in window)).toBe(true);
    }
    expect(await first.getByTestId('new-version').textContent()).toContain('1 other window is open');
    // A plain reload goes on with the version that runs, and offers the new one again.
    await first.reload();
    await first.getByText('A newer version is ready.').waitFor({ timeout: 30_000 });
    expect(await first.evaluate(() => document.documentElement.dataset.version)).toBeUndefined();
    await first.getByRole('button', { name: 'Take it now' }).click();
    await first.waitForFunction(() => document.documentElement.dataset.version === '2', null, { timeout: 30_000 });
    await second.getByTestId('overtaken').waitFor({ timeout: 30_000 });
    expect(await second.evaluate(() => 'stayed' in window)).toBe(true);
    await second.getByLabel('Road and mile, site or position').fill('third culv');
    await second.locator('.hits button').filter({ hasText: 'Third Culvert' }).waitFor({ timeout: 15_000 });
  }, 180_000);
});
