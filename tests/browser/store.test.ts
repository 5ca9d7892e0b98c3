import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { WebBook } from '../../src/io/web/store/index.ts';
import { launchChromium, withoutChromium } from './chromium.ts';
import type { StorePage } from './store-page.ts';
import { type StoreServer, serveStorePage } from './store-server.ts';

type Driven = StorePage & { opened: WebBook };

describe.skipIf(withoutChromium())('the book in a browser', () => {
  let server: StoreServer;
  let browser: Browser;
  let context: BrowserContext;
  beforeAll(async () => {
    server = await serveStorePage();
    browser = await launchChromium();
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    server?.close();
  });
  afterEach(() => context?.close());

  /** A tab with the book open as `window.opened`. */
  const tab = async (): Promise<Page> => {
    const page = await context.newPage();
    await page.goto(server.url);
    await page.waitForFunction(() => 'store' in window);
    await page.evaluate(async () => {
      const page = window as unknown as Driven;
      page.opened = await page.store.openWebBook('book', { who: 'Officer A', device: 'desk' });
    });
    return page;
  };
  /** Names or renames a site; the number of the update, or the sentence of the refusal. */
  const name = (page: Page, id: string, to: string): Promise<number | string> =>
    page.evaluate(
      async ([site, text]) => {
        const { book } = (window as unknown as Driven).opened;
        const place = { lon: 0, lat: 0, sideAzimuthDeg: 0 };
        const set = book.record('sites', site!) ? { name: text! } : { name: text!, place };
        return book
          .edit([{ table: 'sites', id: site!, set }], `Name ${text}`)
          .then((update) => update!.n)
          .catch((error: Error) => error.message);
      },
      [id, to] as const,
    );
  const sites = (page: Page): Promise<string[]> =>
    page.evaluate(() => (window as unknown as Driven).opened.book.book().tables.sites.map((site) => site.name));
  const sitesLike = async (page: Page, expected: string[]): Promise<void> =>
    expect.poll(() => sites(page), { timeout: 10_000 }).toEqual(expected);

  it('keeps edits over a reload, undo included', async () => {
    context = await browser.newContext();
    const page = await tab();
    expect([await name(page, 's', 'A'), await name(page, 's', 'B')]).toEqual([1, 2]);
    await page.close();
    const again = await tab();
    expect(await sites(again)).toEqual(['B']);
    await again.evaluate(() => (window as unknown as Driven).opened.book.undo());
    expect(await sites(again)).toEqual(['A']);
  }, 60_000);

  it('in two tabs is one book: news at once, no number twice, both values of one field kept', async () => {
    context = await browser.newContext();
    const [one, two] = [await tab(), await tab()];
    await name(one, 's', 'A');
    await sitesLike(two, ['A']);
    const numbers = await Promise.all(Array.from({ length: 20 }, (_, i) => name(i % 2 ? one : two, `t${i}`, `T${i}`)));
    expect([...numbers].sort((a, b) => Number(a) - Number(b))).toEqual(Array.from({ length: 20 }, (_, i) => i + 2));
    await expect.poll(async () => (await sites(one)).length).toBe(21);
    expect(await sites(one)).toEqual(await sites(two));
    // A tab that sleeps through the news and edits what it shows: both values stand.
    await two.evaluate(async () => {
      const page = window as unknown as Driven;
      await page.opened.close();
    });
    const asleep = await tab();
    await asleep.evaluate(() => {
      BroadcastChannel.prototype.postMessage = () => undefined;
    });
    await name(asleep, 's', 'asleep');
    await name(one, 's', 'awake');
    const contested = () => one.evaluate(() => (window as unknown as Driven).opened.book.book().contested.length);
    await one.evaluate(() => (window as unknown as Driven).opened.book.refresh());
    expect(await contested()).toBe(1);
  }, 60_000);

  it('on a full disk says so, keeps the book whole, and saves again once there is room', async () => {
    context = await browser.newContext();
    const blank = await context.newPage();
    const devtools = await context.newCDPSession(blank);
    // Before the origin's first write: a later override was seen to be ignored.
    await devtools.send('Storage.overrideQuotaForOrigin', { origin: new URL(server.url).origin, quotaSize: 3_000_000 });
    const page = await tab();
    await name(page, 's', 'A');
    const photos = await page.evaluate(async () => {
      const { book } = (window as unknown as Driven).opened;
      for (let i = 0; i < 40; i++) {
        const hash = i.toString(16).padStart(64, '0');
        const set = {
          siteId: 's',
          hash,
          type: 'image/jpeg',
          widthPx: 1,
          heightPx: 1,
          sizeBytes: 200_000,
          showsPatient: false,
        };
        const bytes = crypto.getRandomValues(new Uint8Array(50_000));
        const blob = new Blob([bytes, bytes, bytes, bytes]);
        const refusal = await book.edit([{ table: 'photos', id: `p${i}`, set }], 'Photo', new Map([[hash, blob]])).then(
          () => null,
          (error: Error) => error.message,
        );
        if (refusal) return { kept: i, refusal, unsaved: book.unsaved.length };
      }
      return null;
    });
    expect(photos).toMatchObject({
      refusal: expect.stringMatching(/^There is no room left on this device: this change is not saved\./),
      unsaved: 1,
    });
    expect(photos!.kept).toBeGreaterThan(3);
    const held = (from: Page) =>
      from.evaluate(async () => {
        const { book } = (window as unknown as Driven).opened;
        return {
          photos: book.book().tables.photos.length,
          blobs: (await book.photoHashes()).length,
          updates: (await book.updates()).length,
        };
      });
    const whole = { photos: photos!.kept, blobs: photos!.kept, updates: photos!.kept + 1 };
    expect(await held(page)).toEqual(whole);
    const other = await tab();
    expect(await held(other)).toEqual(whole);
    await devtools.send('Storage.overrideQuotaForOrigin', {
      origin: new URL(server.url).origin,
      quotaSize: 50_000_000,
    });
    const unsaved = await page.evaluate(async () => {
      const { book } = (window as unknown as Driven).opened;
      await book.saveAgain();
      return book.unsaved.length;
    });
    expect(unsaved).toBe(0);
    await expect
      .poll(() => held(other))
      .toEqual({ photos: whole.photos + 1, blobs: whole.blobs + 1, updates: whole.updates + 1 });
  }, 60_000);

  it('leaves a plain snapshot for readers when a page ends, and tells when it is behind', async () => {
    context = await browser.newContext();
    const page = await tab();
    const read = (from: Page) =>
      from.evaluate(async () => {
        const found = await (window as unknown as Driven).store.readerSnapshot('book');
        return found && { sites: found.book.tables.sites.map((site) => site.name), behind: found.behind };
      });
    const reader = await tab();
    expect(await read(reader)).toBeNull();
    await name(page, 's', 'A');
    await page.evaluate(() => (window as unknown as Driven).opened.book.settle());
    expect(await read(reader)).toEqual({ sites: ['A'], behind: false });
    await name(page, 's', 'B');
    expect(await read(reader)).toEqual({ sites: ['A'], behind: true });
    await page.evaluate(() => dispatchEvent(new Event('pagehide')));
    await expect.poll(() => read(reader)).toEqual({ sites: ['B'], behind: false });
  }, 60_000);

  it('comes back from the second copy where the browser has emptied its database', async () => {
    context = await browser.newContext();
    const page = await tab();
    await name(page, 's', 'A');
    for (let i = 0; i < 70; i++) await name(page, 's', `A${i}`);
    const hash = 'cd'.repeat(32);
    await page.evaluate(async (photo) => {
      const set = {
        siteId: 's',
        hash: photo,
        type: 'image/jpeg',
        widthPx: 1,
        heightPx: 1,
        sizeBytes: 3,
        showsPatient: false,
      };
      const { opened } = window as unknown as Driven;
      await opened.book.settle();
      await opened.book.edit([{ table: 'photos', id: 'p', set }], 'Photo', new Map([[photo, new Blob(['abc'])]]));
      await opened.close();
      await new Promise<void>((done, failed) => {
        const request = indexedDB.deleteDatabase('book');
        request.onsuccess = () => done();
        request.onerror = () => failed(request.error);
      });
    }, hash);
    const read = await page.evaluate(async () => {
      const found = await (window as unknown as Driven).store.readerSnapshot('book');
      return found && { sites: found.book.tables.sites.map((site) => site.name), behind: found.behind };
    });
    expect(read).toEqual({ sites: ['A69'], behind: true });
    await page.close();
    const state = (from: Page) =>
      from.evaluate(async (photo) => {
        const { book } = (window as unknown as Driven).opened;
        const bytes = await (await book.photo(photo))?.text();
        return { recovered: book.recovered, copy: book.secondCopy, updates: (await book.updates()).length, bytes };
      }, hash);
    const again = await tab();
    expect(await sites(again)).toEqual(['A69']);
    expect(await state(again)).toEqual({ recovered: 72, copy: 'current', updates: 72, bytes: 'abc' });
    // Nothing is taken for lost twice.
    expect(await state(await tab())).toEqual({ recovered: 0, copy: 'current', updates: 72, bytes: 'abc' });
  }, 60_000);

  it('says how the browser keeps it', async () => {
    context = await browser.newContext();
    const page = await tab();
    const state = await page.evaluate(async () => {
      const { store } = window as unknown as Driven;
      return { asked: await store.askToPersist(), state: await store.storageState() };
    });
    expect([typeof state.asked, typeof state.state.persisted]).toEqual(['boolean', 'boolean']);
    expect(state.state.usedBytes).toBeGreaterThan(0);
  }, 60_000);
});
