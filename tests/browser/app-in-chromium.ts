import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import { type RunningApp, startApp } from './app.ts';
import { launchChromium } from './chromium.ts';

/** The app as `npm start` serves it and a browser, for the tests of a `describe`: started before them, stopped after them. */
export function appInChromium(): { readonly url: string; readonly browser: Browser } {
  let app: RunningApp | undefined;
  let browser: Browser | undefined;
  beforeAll(async () => {
    await Promise.all([
      startApp().then((started) => {
        app = started;
      }),
      launchChromium().then((launched) => {
        browser = launched;
      }),
    ]);
  }, 240_000);
  afterAll(async () => {
    await browser?.close();
    // As Ctrl-C ends it.
    if (app) expect(await app.stop()).toBe(0);
  });
  return {
    get url() {
      return app!.url;
    },
    get browser() {
      return browser!;
    },
  };
}
