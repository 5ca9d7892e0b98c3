import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, expect } from 'vitest';
import { openPage, type PageNeeds, type WatchedPage } from './page.ts';

/**
 * One page for the tests of a `describe`, which put back what they changed: opening one costs more than most tests do. Gives
 * what brings it to a `hash`, by way of another screen so that nothing of the test before is in hand. After each test nothing
 * may have gone off the host and nothing have been refused; a page on which a test failed is not used again.
 */
export function onePage(
  here: { readonly url: string; readonly browser: Browser },
  options: BrowserContextOptions,
  needs?: PageNeeds,
): (hash: string) => Promise<Page> {
  let open: WatchedPage | null = null;
  const close = async (): Promise<void> => {
    await open?.close();
    open = null;
  };
  afterEach(async ({ task }) => {
    const told = open ? [...open.strayRequests.splice(0), ...open.complaints.splice(0)] : [];
    if (task.result?.state === 'fail' || told.length > 0) await close();
    expect(told).toEqual([]);
  });
  afterAll(close);
  return async (hash) => {
    if (!open) open = await openPage(here.browser, `${here.url}/${hash}`, options, needs);
    else {
      await open.page.goto(`${here.url}/#/book?history`);
      await open.page.getByRole('list', { name: 'History' }).waitFor();
      await open.page.goto(`${here.url}/${hash}`);
    }
    return open.page;
  };
}
