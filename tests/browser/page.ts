import type { Browser, BrowserContextOptions, Page } from 'playwright-core';

/** A page under watch: what it asked for off its host, and what its content security policy refused. */
export interface WatchedPage {
  readonly page: Page;
  readonly strayRequests: string[];
  readonly complaints: string[];
  close(): Promise<void>;
}

/** Half a device pixel to a pixel of the page: laid out the same, and a software renderer draws a quarter of it. */
export const desk: BrowserContextOptions = { viewport: { width: 1440, height: 900 }, deviceScaleFactor: 0.5 };
/** The smallest page that still is laid out as on a desk. */
export const smallDesk: BrowserContextOptions = { viewport: { width: 1110, height: 700 }, deviceScaleFactor: 0.5 };
export const phone: BrowserContextOptions = {
  viewport: { width: 390, height: 844 },
  deviceScaleFactor: 1,
  isMobile: true,
  hasTouch: true,
};

/** What a test needs of a page beside the screen; each costs every page seconds of work that most tests say nothing of. */
export interface PageNeeds {
  /** The roadside is read; otherwise it is stopped, as a person would leave it: it takes a whole core. */
  readonly roadside?: boolean;
  /**
   * `drawn`: the map's picture is looked at. `there`: the map is used, but its drawing goes nowhere. Left out, the browser gives
   * no WebGL and the page has no map. A software renderer takes half of all that a page costs.
   */
  readonly map?: 'drawn' | 'there';
  /** The app keeps itself on the device; otherwise the browser is one without service workers. */
  readonly kept?: boolean;
}

/** Opens `url` in a fresh context and listens from before its first byte. */
export async function openPage(
  browser: Browser,
  url: string,
  options: BrowserContextOptions,
  { roadside = false, map, kept = false }: PageNeeds = {},
): Promise<WatchedPage> {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  const strayRequests: string[] = [];
  const complaints: string[] = [];
  const host = new URL(url).origin;
  context.on('request', (request) => {
    const address = request.url();
    if (!address.startsWith(`${host}/`) && !/^(data|blob):/.test(address)) strayRequests.push(address);
  });
  // Refusals inside workers reach the console only; those of the page reach both.
  page.on('console', (message) => {
    if (message.type() === 'error' || /content security policy/i.test(message.text())) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.exposeFunction('reportRefusal', (what: string) => complaints.push(what));
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      (window as unknown as { reportRefusal(what: string): void }).reportRefusal(
        `${event.violatedDirective} refused ${event.blockedURI}`,
      );
    });
  });
  if (!roadside) await page.addInitScript(stopReading);
  if (map !== 'drawn') await page.addInitScript(map === 'there' ? drawNothing : giveNoWebGl);
  if (!kept)
    await page.addInitScript(() => Object.defineProperty(Navigator.prototype, 'serviceWorker', { value: undefined }));
  await page.goto(url);
  return { page, strayRequests, complaints, close: () => context.close() };
}

/** For a page's first script: the reading of the roadside is stopped. */
export function stopReading(): void {
  // Empty pages and sandboxed frames have no storage.
  if (location.protocol === 'http:') sessionStorage.setItem('brinkbook-roadside-stopped', 'yes');
}

/** For a page's first script: the browser gives no WebGL, so that there is no map. */
export function giveNoWebGl(): void {
  const give = HTMLCanvasElement.prototype.getContext as (this: HTMLCanvasElement, ...args: unknown[]) => unknown;
  HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, kind: string, ...more: unknown[]) {
    return kind.startsWith('webgl') ? null : give.call(this, kind, ...more);
  } as HTMLCanvasElement['getContext'];
}

/** For a page's first script: the map is there with its sources, handles and events, what it draws goes nowhere. */
export function drawNothing(): void {
  const gl = WebGL2RenderingContext.prototype as unknown as Record<string, () => void>;
  const calls = [
    'drawElements',
    'drawArrays',
    'drawElementsInstanced',
    'drawArraysInstanced',
    'clear',
    'generateMipmap',
  ];
  const data = ['texImage2D', 'texSubImage2D', 'texParameteri', 'texParameterf', 'bufferData', 'bufferSubData'];
  for (const name of [...calls, ...data]) gl[name] = () => {};
}

/** The sentence on the screen, with plain spaces. */
export const sentence = async (page: Page): Promise<string> =>
  ((await page.getByTestId('sentence').textContent()) ?? '').replaceAll('\u00a0', ' ');

/** Waits until the sentence fits a pattern and returns it. */
export async function sentenceLike(page: Page, pattern: RegExp, timeout = 30_000): Promise<string> {
  await page.waitForFunction(
    ({ source }) => {
      const words = document.querySelector('[data-testid=sentence]')?.textContent?.replaceAll('\u00a0', ' ');
      return words !== undefined && new RegExp(source).test(words);
    },
    { source: pattern.source },
    { timeout },
  );
  return sentence(page);
}

/** Waits until the map has drawn all that is in view. */
export const mapDrawn = async (page: Page): Promise<void> => {
  await page.waitForSelector('.map-view[data-drawn="yes"]', { timeout: 60_000 });
};

/** The profile's ground line as drawn: it changes whenever another place is shown. */
export const groundLine = (page: Page): Promise<string | null> =>
  page.getByTestId('profile').locator('path.ground').last().getAttribute('d');

/** Middle of the study's point on the screen, pixels. */
export async function pointAt(page: Page): Promise<{ x: number; y: number }> {
  const box = await page.locator('.study-point').boundingBox();
  if (!box) throw new Error('The point is not on the map.');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}
