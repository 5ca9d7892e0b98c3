import type { ServerResponse } from 'node:http';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { makePmtiles } from '../../helpers/make-pmtiles.ts';
import { makePng } from '../../helpers/make-png.ts';
import { launchChromium, withoutChromium } from '../chromium.ts';
import { mapDrawn, openPage, type PageNeeds, type WatchedPage } from '../page.ts';
import { type MapPage, serveMapPage } from './map-page.ts';

const png = makePng(256, [200, 60, 20]);
const foreignStyle = {
  version: 8,
  glyphs: 'https://glyphs.invalid/{fontstack}/{range}.pbf',
  sources: {
    tiles: {
      type: 'raster',
      tiles: ['/tiles/{z}/{x}/{y}.png'],
      tileSize: 256,
      attribution: '<a href="https://maker.invalid/">A Map Maker</a><script>1</script>',
    },
  },
  layers: [{ id: 'paper', type: 'raster', source: 'tiles' }],
};

/** A software renderer draws a small page soon. */
const small = { viewport: { width: 560, height: 420 } };

/** Whether the map's picture is looked at, and its size. */
interface Looks {
  readonly map?: PageNeeds['map'];
  readonly size?: typeof small;
}

describe.skipIf(withoutChromium())('the map on a page of its own', () => {
  let site: MapPage;
  let browser: Browser;
  let watched: WatchedPage;
  const asked: string[] = [];
  const answer = (path: string, response: ServerResponse): boolean => {
    if (path === '/style.json') response.end(JSON.stringify(foreignStyle));
    else if (/^\/tiles\/\d+\/\d+\/\d+\.png$/.test(path)) {
      asked.push(path);
      response.setHeader('Content-Type', 'image/png');
      response.end(png);
    } else if (path.startsWith('/broken/')) response.writeHead(500).end();
    else return false;
    return true;
  };

  beforeAll(async () => {
    site = await serveMapPage(answer);
    browser = await launchChromium();
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    site?.stop();
  });
  afterEach(() => watched?.close());

  const visit = async (query: string, { map = 'there', size = small }: Looks = {}): Promise<Page> => {
    watched = await openPage(browser, site.url + query, size, { map });
    await watched.page.evaluate(() => window.mapReady);
    await mapDrawn(watched.page);
    return watched.page;
  };
  const told = (page: Page, name: string) => page.evaluate((what) => window.told.filter(([one]) => one === what), name);
  const quiet = (): void => {
    expect(watched.strayRequests).toEqual([]);
    expect(watched.complaints).toEqual([]);
  };
  const toKettleBend = (page: Page) =>
    page.evaluate(() => {
      const at = window.district.sites.find(({ id }) => id === 'kettle-bend')!;
      window.mapHandle.show(at);
      return { lon: at.lon, lat: at.lat };
    });
  const problemLine = (page: Page) => page.locator('.map-notices p[role=status]');

  test('reads the roadside in view, tells how far it is, can be stopped and goes on', async () => {
    const page = await visit('?roadside');
    await toKettleBend(page);
    await page.waitForSelector('.map-view[data-roadside=reading]');
    await page.getByRole('button', { name: 'stop' }).click();
    await page.waitForSelector('.map-view[data-roadside=stopped]');
    await page.getByRole('button', { name: 'read on' }).click();
    await page.waitForSelector('.map-view[data-roadside=read]', { timeout: 40_000 });
    await expect.poll(() => page.locator('.map-reading').isVisible()).toBe(false);
    quiet();
  }, 90_000);

  test('contours and their heights are drawn from the ground, flat and in relief; flat again, north is up', async () => {
    const page = await visit('', { map: 'drawn', size: { viewport: { width: 360, height: 300 } } });
    await toKettleBend(page);
    const looks = async () => {
      const { pitchDeg, bearingDeg } = await page.evaluate(() => window.mapHandle.look());
      return { pitchDeg, bearingDeg, scale: await page.locator('.map-scale').getAttribute('aria-label') };
    };
    /** Pixels of the picture that are plainly green and plainly magenta: nothing else of the map is. */
    const coloured = async (): Promise<{ green: number; magenta: number }> => {
      await mapDrawn(page);
      const png = (await page.screenshot()).toString('base64');
      return page.evaluate(async (data) => {
        const bytes = Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
        const picture = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
        const pen = new OffscreenCanvas(picture.width, picture.height).getContext('2d')!;
        pen.drawImage(picture, 0, 0);
        const { data: px } = pen.getImageData(0, 0, picture.width, picture.height);
        let [green, magenta] = [0, 0];
        for (let i = 0; i < px.length; i += 4) {
          if (px[i + 1]! - Math.max(px[i]!, px[i + 2]!) > 60) green++;
          if (Math.min(px[i]!, px[i + 2]!) - px[i + 1]! > 60) magenta++;
        }
        return { green, magenta };
      }, png);
    };
    const enough = (name: 'green' | 'magenta', least: number) =>
      expect.poll(async () => (await coloured())[name], { timeout: 20_000 }).toBeGreaterThan(least);
    const none = { green: 0, magenta: 0 };
    expect(await coloured()).toEqual(none);
    await page.evaluate(() =>
      window.mapHandle.setInk({ ...window.mapInk, contour2: '#00ff00', contourText: '#ff00ff' }),
    );
    await enough('green', 300);
    await enough('magenta', 30);

    // A software renderer takes seconds for every picture in relief: it is turned on once.
    const button = page.getByRole('button', { name: '3D relief' });
    await button.click();
    await enough('green', 300);
    expect(await button.getAttribute('aria-pressed')).toBe('true');
    expect((await looks()).pitchDeg).toBeGreaterThan(40);
    await page.evaluate(() => window.mapHandle.setLook({ ...window.mapHandle.look(), bearingDeg: 40 }));
    expect((await looks()).scale).toContain('North is 40° to the left of up');
    await button.click();
    expect(await looks()).toMatchObject({ pitchDeg: 0, bearingDeg: 0, scale: expect.stringContaining('North is up') });

    await page.evaluate(() => window.mapHandle.setInk(window.mapInk));
    await expect.poll(coloured, { timeout: 20_000 }).toEqual(none);
    expect(await told(page, 'problem')).toEqual([]);
    quiet();
  }, 90_000);

  test('a basemap of a style address lies under the map, with its maker named and no foreign glyphs', async () => {
    const page = await visit('');
    asked.length = 0;
    await page.evaluate(() => window.mapHandle.setBasemap({ kind: 'style', url: '/style.json' }));
    await expect.poll(() => asked.length).toBeGreaterThan(2);
    await expect
      .poll(() => page.locator('.map-attribution').textContent())
      .toBe('Invented ground, roads and names. · A Map Maker');
    expect(await page.locator('.map-attribution a').getAttribute('href')).toBe('https://maker.invalid/');
    await page.evaluate(() => window.mapHandle.setBasemap(null));
    await expect.poll(() => page.locator('.map-attribution').textContent()).toBe('Invented ground, roads and names.');
    quiet();
  }, 60_000);

  test('raster tiles must say whose they are; a PMTiles file from this machine needs no request', async () => {
    const page = await visit('');
    await page.evaluate(() =>
      window.mapHandle.setBasemap({ kind: 'raster', url: '/tiles/{z}/{x}/{y}.png', attribution: ' ' }),
    );
    expect(await problemLine(page).textContent()).toContain('Say whose map it is');
    asked.length = 0;
    const file = [...makePmtiles(png, { attribution: 'Held here' })];
    await page.evaluate(
      (bytes) =>
        window.mapHandle.setBasemap({ kind: 'file', file: new File([Uint8Array.from(bytes)], 'county.pmtiles') }),
      file,
    );
    await expect.poll(() => page.locator('.map-attribution').textContent()).toContain('Held here');
    await mapDrawn(page);
    expect(await problemLine(page).isVisible()).toBe(false);
    await page.evaluate(() =>
      window.mapHandle.setBasemap({ kind: 'file', file: new File(['nothing'], 'broken.pmtiles') }),
    );
    expect(await problemLine(page).textContent()).toContain(
      'broken.pmtiles is no PMTiles file of version 3, or it is cut off; choose another one. The map goes on without it.',
    );
    expect(asked).toEqual([]);
    expect(watched.strayRequests).toEqual([]);
  }, 60_000);

  test('where a basemap fails, by its address, its tiles or the policy, one line says so and taps still count', async () => {
    const page = await visit('');
    for (const [basemap, words] of [
      [{ kind: 'style', url: '/nothing.json' }, 'answered 404'],
      [{ kind: 'style', url: 'https://maps.invalid/style.json' }, 'cannot be reached'],
      [
        { kind: 'raster', url: '/nothing/{z}/{x}/{y}.png', attribution: 'Nobody' },
        'has brought no picture of this place',
      ],
      [{ kind: 'raster', url: '/broken/{z}/{x}/{y}.png', attribution: 'Nobody' }, 'gives no picture here'],
    ] as const) {
      await page.evaluate((one) => window.mapHandle.setBasemap(one), basemap);
      await expect.poll(() => problemLine(page).textContent(), { timeout: 20_000 }).toContain(words);
      expect(await problemLine(page).textContent()).toContain('The map goes on without it.');
    }
    await mapDrawn(page);
    await page.mouse.click(200, 150);
    expect((await told(page, 'place')).length).toBe(1);
    expect(await told(page, 'problem')).toEqual([]);
    expect(watched.strayRequests).toEqual([]);
    await page.getByRole('button', { name: 'close' }).click();
    expect(await problemLine(page).isVisible()).toBe(false);
  }, 60_000);

  test('a layout’s apparatus is dragged and nudged, its anchors are tapped, by mouse and by key', async () => {
    const page = await visit('');
    const at = await toKettleBend(page);
    await page.evaluate(
      async ({ lon, lat, fakeSpot }) => {
        const study = await window.studyAt(lon, lat);
        const spot = { ...fakeSpot, id: 'S:engine', lon: lon + 0.0003, lat };
        const place = (east: number, north: number) => ({ lon: lon + east, lat: lat + north });
        const layout = {
          id: 'L',
          anchor: 'S:engine',
          turn: null,
          points: {
            edge: place(0, 0),
            turn: null,
            anchor: place(0.0003, 0),
            belayAnchor: place(0.0001, 0.0001),
            handTurn: null,
          },
          lines: { main: {}, belay: { anchor: 'T1' }, hand: null },
          haulFieldM: 24,
          keepOut: {
            type: 'Polygon',
            coordinates: [
              [
                [lon, lat],
                [lon + 0.0003, lat],
                [lon, lat + 0.0002],
                [lon, lat],
              ],
            ],
          },
        };
        const marks = [
          { id: 'T1', kind: 'tree', name: 'Big pine', geometry: { type: 'Point', coordinates: [lon, lat] } },
        ];
        window.mapHandle.setLayout({ ...study, spots: [spot], layouts: [layout], marks } as never, 'L');
      },
      { ...at, fakeSpot },
    );
    await page.evaluate((place) => window.mapHandle.setLook({ at: place, zoom: 19, bearingDeg: 0, pitchDeg: 0 }), at);
    const engine = page.getByRole('button', { name: /^Engine 1\. Drag it/ });
    expect(await page.locator('.layout-lines .ruler-words').textContent()).toBe('haul field 78 ft');
    const box = (await engine.locator('.outline').boundingBox())!;
    const [x, y] = [box.x + box.width * 0.8, box.y + box.height / 2];
    const look = await page.evaluate(() => window.mapHandle.look());
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let i = 1; i <= 5; i++) await page.mouse.move(x + 8 * i, y);
    await page.mouse.up();
    const moves = await told(page, 'spot move');
    const places = (await told(page, 'spot place')) as unknown as [string, { id: string; at: { lon: number } }][];
    expect(moves.length).toBeGreaterThan(2);
    expect(places).toHaveLength(1);
    expect(places[0]![1].id).toBe('S:engine');
    expect(places[0]![1].at.lon).toBeGreaterThan(at.lon + 0.0003);
    // The press neither moved the map nor placed a site.
    expect(await page.evaluate(() => window.mapHandle.look())).toEqual(look);
    expect(await told(page, 'place')).toEqual([]);
    await engine.focus();
    await page.keyboard.press(']');
    const turned = (await told(page, 'spot place')) as unknown as [string, { headingDeg: number }][];
    expect(turned.at(-1)![1].headingDeg).toBe(95);
    await page.getByRole('button', { name: 'Big pine, belay anchor' }).click({ force: true });
    expect(await told(page, 'anchor')).toEqual([['anchor', 'T1']]);
    quiet();
  }, 60_000);

  test('the nearest site is meant by a tap, the look is told and can be set', async () => {
    const page = await visit('?sites=400');
    const first = await page.evaluate(() => window.district.sites[200]!);
    await page.evaluate((at) => window.mapHandle.setLook({ at, zoom: 15, bearingDeg: 0, pitchDeg: 0 }), {
      lon: first.lon,
      lat: first.lat,
    });
    await mapDrawn(page);
    await page.mouse.click(small.viewport.width / 2 + 6, small.viewport.height / 2);
    expect((await told(page, 'site')).map(([, id]) => id)).toEqual([first.id]);
    const looks = (await told(page, 'look')) as unknown as [string, { zoom: number }][];
    expect(looks.at(-1)![1].zoom).toBe(15);
    quiet();
  }, 60_000);
});

const fakeSpot = {
  apparatus: 'Engine 1',
  lengthM: 9,
  widthM: 2.5,
  headingDeg: 90,
  stationM: 0,
  offsetM: 0,
  gradeDeg: 0,
  crossfallDeg: 0,
  edgeClearanceM: 3,
  lanesBlocked: 1,
  holdKn: 20,
  use: 'anchor',
  problems: [],
  workable: true,
  pinned: false,
};
