import type { Browser } from 'playwright-core';
import { beforeAll } from 'vitest';
import { type RunningApp, sharedApp } from './app.ts';
import { sharedChromium } from './chromium.ts';

/** The app as `npm start` serves it and a browser, for the tests of a `describe`. */
export function appInChromium(): { readonly url: string; readonly browser: Browser } {
  let app: RunningApp | undefined;
  let browser: Browser | undefined;
  beforeAll(async () => {
    app = await sharedApp();
    browser = await sharedChromium();
  }, 240_000);
  return {
    get url() {
      return app!.url;
    },
    get browser() {
      return browser!;
    },
  };
}
