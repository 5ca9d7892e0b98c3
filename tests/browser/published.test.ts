import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { publishedPolicy } from '../../config/csp.mjs';
import { readRecord } from '../../src/book/index.ts';
import { main } from '../../src/cli/main.ts';
import { makePng } from '../helpers/make-png.ts';
import { demoFileOptions, writeSmallBook } from '../helpers/small-district.ts';
import { root, startApp } from './app.ts';
import { launchChromium, withoutChromium } from './chromium.ts';
import { type FolderServer, folderServer } from './folder-server.ts';
import { openPage, phone, sentenceLike } from './page.ts';

const folder = mkdtempSync(join(tmpdir(), 'brinkbook-published-'));

describe.skipIf(withoutChromium())('a published folder under a path of a plain host', () => {
  let server: FolderServer;
  let browser: Browser;
  beforeAll(async () => {
    // Builds the app where it is old.
    await (await startApp()).stop();
    const book = join(folder, 'small.brinkbook');
    // Without its readings the first is planned as steep, so that there is a haul to work out.
    const picture = new Uint8Array(makePng(64, [90, 120, 90]));
    const hash = createHash('sha256').update(picture).digest('hex');
    const facts = { hash, type: 'image/png', widthPx: 64, heightPx: 64, sizeBytes: picture.length };
    const words = { caption: 'the lip', showsPatient: false, showsPlate: false };
    const photo = readRecord('photos', { id: 'p1', siteId: 'kettle-bend', ...facts, ...words }, 'this test');
    const field = readRecord(
      'supportPlaces',
      { id: 'lz1', siteId: 'kettle-bend', kind: 'landing zone', name: 'Far Field', at: { lon: -128.01, lat: 44.002 } },
      'this test',
    );
    await writeSmallBook(
      book,
      ['kettle-bend', 'third-culvert', 'two-legs'],
      (whole) => ({
        ...whole,
        tables: {
          ...whole.tables,
          measurements: [],
          photos: [photo],
          supportPlaces: [field],
          // Nobody can work out a place this far off every road.
          sites: whole.tables.sites.map((site) =>
            site.id === 'two-legs'
              ? { ...site, radio: 'Fire 3', place: { ...site.place, lat: site.place.lat - 0.02 } }
              : site,
          ),
        },
      }),
      new Map([[hash, picture]]),
    );
    const args = ['publish', '--book', book, ...demoFileOptions, '--out', join(folder, 'out')];
    expect(await main(args, { folder: () => join(root, 'dist'), policy: publishedPolicy })).toBe(0);
    server = await folderServer(join(folder, 'out'), '/x/y/');
    browser = await launchChromium();
  }, 300_000);
  afterAll(async () => {
    await browser?.close();
    await server?.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  test('lists its sheets, opens, is searched, shows a plan, keeps itself, and does all that without a network', async () => {
    const { page, strayRequests, complaints, close } = await openPage(browser, server.url, phone, { kept: true });
    await page.getByText('Anyone with the address can read it.').waitFor();
    await page.getByRole('link', { name: 'Kettle Bend' }).click();
    await page
      .getByRole('img', { name: /Kettle Bend/ })
      .first()
      .waitFor();
    await page.goBack();
    await page.getByRole('link', { name: 'Open the call view' }).click();

    await page.getByRole('heading', { name: 'Tamarrow Fire District' }).waitFor({ timeout: 30_000 });
    await page.getByText('An invented district, for trying out.').waitFor();
    await page.getByText(/Published today.* Anyone with the address can read it\./).waitFor();
    await page.getByText('Kept on this device: app, 2 of 3 sites').waitFor({ timeout: 90_000 });
    expect(server.parts).toContain('/data/elevation/elevation-1m.tif');
    const find = async (): Promise<string> => {
      await page.getByLabel('Road and mile, site or position').fill('ketle bend');
      await page.locator('.hits button').first().click();
      return sentenceLike(page, /^Plan as steep/);
    };
    const online = await find();
    expect(await page.getByRole('link', { name: 'The whole study' }).count()).toBe(0);

    await server.leave();
    await page.reload();
    expect(await sentenceLike(page, /^Plan as steep/)).toBe(online);
    await page.goto(`${server.url}call/`);
    expect(await find()).toBe(online);
    await page.getByText(/^Landing zone Far Field, .* in a straight line.*44° 0\.120′ N/).waitFor();
    const shown = page.getByRole('img', { name: 'the lip' });
    await expect.poll(() => shown.evaluate((one: HTMLImageElement) => one.naturalWidth)).toBe(64);
    // A site that nobody could work out still says where it is, whom to call and why there is no more.
    await page.goto(`${server.url}call/#site=two-legs`);
    const unworked = page.getByTestId('unworked');
    await unworked.getByText('it counts as high').waitFor();
    await page.getByRole('heading', { name: 'Two Legs' }).waitFor();
    await unworked.getByText(/^43° 58\.\d+′ N, 128° \d+\.\d+′ W · US National Grid 9T/).waitFor();
    await unworked.getByText('Radio Fire 3.').waitFor();
    // Once, with every reason: none is known to hold.
    await unworked
      .getByRole('listitem')
      .filter({ hasText: /^Technical rope team.*if .*, if rope/ })
      .waitFor();
    expect(await unworked.locator('.calls a[href^="tel:"]').count()).toBeGreaterThan(0);
    expect(await unworked.textContent()).toMatch(/Verify on site\..*Not field-verified\./);
    await page
      .getByRole('alert')
      .getByText(/No road within 50 m/)
      .waitFor();
    await page.goto(`${server.url}call/#site=kettle-bend`);
    await sentenceLike(page, /^Plan as steep/);
    // Another circumstance is computed here, from the kept parts of the published ground.
    await page.getByRole('button', { name: 'night' }).click();
    await sentenceLike(page, /for night/, 60_000);
    await page.goto(`${server.url}call/#at=43.99952,-128.01562,8`);
    await page.locator('.edges li').first().waitFor({ timeout: 60_000 });
    expect(strayRequests).toEqual([]);
    expect(server.misses).toEqual([]);
    // What the browser says of a host that is away is no complaint of the page.
    expect(complaints.filter((text) => !/net::ERR_|Failed to load resource/.test(text))).toEqual([]);
    await close();
    await server.comeBack();
  }, 240_000);

  test('a new publication is taken over at the next visit, also where a study of the former one is kept', async () => {
    const { page, close } = await openPage(browser, `${server.url}call/`, phone, { kept: true });
    await page.getByText('Kept on this device: app, 2 of 3 sites').waitFor({ timeout: 90_000 });
    await page.goto(`${server.url}call/#site=kettle-bend`);
    const before = await sentenceLike(page, /^Plan as steep/);
    const change = (path: string, from: RegExp, to: string): void => {
      const bytes = readFileSync(join(folder, 'out', path));
      // This host has the browser unpack packed files.
      const packed = path.endsWith('.gz');
      const text = (packed ? gunzipSync(bytes) : bytes).toString();
      expect(text).toMatch(from);
      const changed = text.replace(from, to);
      writeFileSync(join(folder, 'out', path), packed ? gzipSync(changed) : changed);
    };
    change('data/publication.json', /"madeFrom":"[^"]*"/, '"madeFrom":"published later"');
    change('data/publication.json', /"district":"[^"]*"/, '"district":"Tamarrow, later"');
    change('data/studies/kettle-bend-dry.json.gz', /"sentence":"Plan as/, '"sentence":"Later: plan as');
    // The open screen is told of it, quietly, and stays as it is until somebody takes it.
    await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
    const newer = page.getByTestId('newer-district');
    await newer.getByText('A newer publication is there. This screen stays as it is until you take it.').waitFor();
    expect(await sentenceLike(page, /^Plan as/)).toBe(before);
    await newer.getByRole('button', { name: 'Take it now' }).click();
    await sentenceLike(page, /^Later: plan as/, 90_000);
    expect(await newer.count()).toBe(0);

    change('data/publication.json', /"madeFrom":"[^"]*"/, '"madeFrom":"published later still"');
    change('data/studies/kettle-bend-dry.json.gz', /"sentence":"Later: plan/, '"sentence":"Later still: plan');
    await page.reload();
    // The plan that was kept is read at once; that it is older by now is told when the newer one is whole.
    await sentenceLike(page, /^Later: plan as/);
    await newer.getByRole('button', { name: 'Take it now' }).click({ timeout: 90_000 });
    await sentenceLike(page, /^Later still: plan as/);
    await page.getByRole('button', { name: 'All sites' }).click();
    await page.getByRole('heading', { name: 'Tamarrow, later' }).waitFor();
    await close();
  }, 240_000);
});
