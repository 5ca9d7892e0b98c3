import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { openPage, smallDesk, type WatchedPage } from './page.ts';

/** The book's screen in a fresh context, opened at a leaf by its name in the address bar. */
export async function openLeaf(browser: Browser, url: string, leaf: string): Promise<WatchedPage> {
  const opened = await openPage(browser, `${url}/#/book?${leaf}`, smallDesk);
  await bookReady(opened.page);
  return opened;
}

/** Waits until the book is open. */
export const bookReady = (page: Page): Promise<void> =>
  page.locator('[data-testid=storage]').waitFor({ timeout: 30_000 });

/** Turns to a leaf by its words in the contents. */
export const turnTo = (page: Page, words: string): Promise<void> =>
  page.getByRole('navigation', { name: 'Contents of the book' }).getByRole('link', { name: words }).click();

/** Waits until everything that was edited is kept. */
export const saved = (page: Page): Promise<void> =>
  page.locator('[data-testid=storage]', { hasText: 'saved on this device' }).waitFor({ timeout: 10_000 });

/** Presses a key that writes a file, and reads it. */
export async function written(page: Page, key: string): Promise<Buffer> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: key, exact: true }).click();
  return readFileSync(await (await download).path());
}
