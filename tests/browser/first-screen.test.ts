import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { root } from './app.ts';
import { appInChromium } from './app-in-chromium.ts';
import { withoutChromium } from './chromium.ts';
import { onePage } from './one-page.ts';
import { groundLine, mapDrawn, openPage, phone, pointAt, sentence, sentenceLike, smallDesk } from './page.ts';

const planned = /^Plan as (low|steep|high)|^No drop/;

/** The demo's Kettle Bend, from the list of sites that the recipe made. */
const site = (): { lon: number; lat: number; side: string } => {
  const list = JSON.parse(readFileSync(join(root, 'data/demo/sites.json'), 'utf8'));
  return list.sites.find(({ id }: { id: string }) => id === 'kettle-bend');
};

/** What the command line says of the same place and side. */
function sentenceOfCommandLine(at: string, side: string): string {
  const demo = (name: string): string => join(root, 'data/demo', name);
  const files = ['--elevation', demo('elevation-1m.tif'), '--elevation', demo('elevation-10m.tif')];
  files.push('--roads', demo('roads.geojson'), '--book', demo('tamarrow.brinkbook'));
  const args = ['src/cli/launch.mjs', 'study', ...files, '--at', at, '--side', side, '--json'];
  return JSON.parse(execFileSync(process.execPath, args, { cwd: root, encoding: 'utf8' })).sentence;
}

/** Position and side that the address bar holds. */
function addressOf(url: string): { at: string; side: string } {
  const [, at, side] = /#\/\w+\/(-?[\d.]+,-?[\d.]+),(left|right)(?:@.*)?$/.exec(url)!;
  return { at: at!, side: side! };
}

/** Until the study is whole: the map comes closer to it then. */
const settled = async (page: Page): Promise<void> => {
  await page.locator('.notes-top:not([data-draft])[aria-busy=false]').waitFor();
  await mapDrawn(page);
};

describe.skipIf(withoutChromium())('the first screen', () => {
  const here = appInChromium();
  const at = onePage(here, smallDesk, { map: 'there' });

  test('a tap beside a road gives the sentence that the command line gives, and the drawn profile', async () => {
    const page = await at('#/');
    await sentenceLike(page, /sites on \d+ roads/);
    expect(await page.locator('.head').textContent()).toContain('invented');
    await mapDrawn(page);
    await page.getByRole('button', { name: /Kettle Bend/ }).click();
    await page.getByRole('link', { name: 'Study', exact: true }).click();
    const first = await sentenceLike(page, planned);
    // A site's study opens on its drawings; the map is a key away.
    await page.keyboard.press('j');
    await settled(page);
    const { x, y } = await pointAt(page);
    // Farther than a reading taken at the site counts.
    await page.mouse.click(x + 200, y - 30);
    await page.waitForFunction((old) => !location.hash.split('@')[0]!.includes(old), `${site().lon.toFixed(7)}`);
    await page.waitForFunction(() => /,(left|right)(@|$)/.test(location.hash));
    const second = await sentenceLike(page, planned);
    expect(second).not.toBe(first);
    const { at: place, side } = addressOf(page.url());
    const said = `${await stopLine(page)}${second}`;
    expect(said).toBe(sentenceOfCommandLine(place, side));
    expect(said).toMatch(/\(rule 30\/45\)/);
    expect(await groundLine(page)).toMatch(/^M[\d.]+ [\d.]+L/);
    const fan = await page.getByTestId('profile').locator('path.ray').count();
    expect(fan).toBeGreaterThanOrEqual(3);
  }, 120_000);

  test('the demo opens from its book: desk, call view and command line say the same of a site that was measured', async () => {
    const { lon, lat, side } = site();
    const told = sentenceOfCommandLine(`${lon},${lat}`, side);
    expect(told).toContain('Plan as high: 46° measured');
    const page = await at('#/study/kettle-bend');
    const said = await sentenceLike(page, planned);
    expect(`${await stopLine(page)}${said}`).toBe(told);
    const watched = await openPage(here.browser, `${here.url}/call/#site=kettle-bend`, phone);
    expect(await sentenceLike(watched.page, /Plan as/)).toBe(told);
    expect([...watched.strayRequests, ...watched.complaints]).toEqual([]);
    await watched.close();
  }, 120_000);

  test('dragging the point changes sentence and profile while the finger moves', async () => {
    const { lon, lat, side } = site();
    const page = await at(`#/study/${lon},${lat},${side}`);
    await sentenceLike(page, planned);
    await settled(page);
    const before = await sentence(page);
    const lineBefore = await groundLine(page);
    const { x, y } = await pointAt(page);
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let i = 1; i <= 12; i++) await page.mouse.move(x + 8 * i, y - 1.5 * i);
    await page.waitForFunction(
      ([words, line]) =>
        document.querySelector('[data-testid=sentence]')?.textContent?.replaceAll('\u00a0', ' ') !== words &&
        document.querySelector('[data-testid=profile] path.ground:last-of-type')?.getAttribute('d') !== line,
      [before, lineBefore] as const,
      { timeout: 15_000 },
    );
    // The finger is still down: the address has not followed yet.
    expect(page.url().split('@')[0]).toContain(`${lon}`.slice(0, 10));
    // Once it rests what is shown is no draft any more.
    await page.locator('.notes-top:not([data-draft])[aria-busy=false]').waitFor();
    expect(await sentence(page)).not.toContain('still being sought');
    await page.mouse.move(x + 60, y - 12);
    await page.mouse.up();
    await page.locator('.notes-top:not([data-draft])[aria-busy=false]').waitFor();
    expect(await sentence(page)).not.toContain('still being sought');
    await page.waitForFunction((old) => !location.hash.split('@')[0]!.includes(old), `${lon}`.slice(0, 10));
    expect(await sentence(page)).not.toBe(before);
  }, 120_000);

  test('on a phone the same by touch, the whole caution in sight', async () => {
    const { lon, lat, side } = site();
    const watched = await openPage(here.browser, `${here.url}/#/study/${lon},${lat},${side}`, phone, {
      map: 'drawn',
    });
    const { page } = watched;
    await sentenceLike(page, planned);
    await settled(page);
    const before = await sentence(page);
    const caution = await page.locator('.caution').boundingBox();
    expect(caution!.y + caution!.height).toBeLessThanOrEqual(844);
    const { x, y } = await pointAt(page);
    const touch = await page.context().newCDPSession(page);
    const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: { x: number; y: number }[]) =>
      touch.send('Input.dispatchTouchEvent', { type, touchPoints: points });
    await send('touchStart', [{ x, y }]);
    for (let i = 1; i <= 10; i++) await send('touchMove', [{ x: x + 7 * i, y: y - i }]);
    await page.waitForFunction(
      (words) => document.querySelector('[data-testid=sentence]')?.textContent?.replaceAll('\u00a0', ' ') !== words,
      before,
      { timeout: 15_000 },
    );
    await send('touchEnd', []);
    await page.waitForFunction((old) => !location.hash.split('@')[0]!.includes(old), `${lon}`.slice(0, 10));
    await page.getByRole('button', { name: 'Open the notes further' }).click();
    await expect.poll(async () => (await page.locator('.notes').boundingBox())!.height).toBeGreaterThan(560);
    expect([...watched.strayRequests, ...watched.complaints]).toEqual([]);
    await watched.close();
  }, 120_000);

  test('the keyboard alone places a site, moves it and picks a rule', async () => {
    const page = await at('#/');
    await sentenceLike(page, /sites on \d+ roads/);
    const button = page.getByRole('button', { name: /Kettle Bend/ });
    await button.focus();
    await page.keyboard.press('Enter');
    await sentenceLike(page, planned);
    await mapDrawn(page);
    const listed = page.url();
    await page.locator('.maplibregl-canvas').focus();
    await page.keyboard.press('ArrowRight');
    await mapDrawn(page);
    await page.keyboard.press('Enter');
    await page.waitForFunction((old) => location.href !== old && /,(left|right)(@|$)/.test(location.hash), listed);
    const placed = page.url();
    await page.locator('.study-point').focus();
    for (let i = 0; i < 3; i++) await page.keyboard.press('Shift+ArrowLeft');
    await page.keyboard.press('Enter');
    await page.waitForFunction((old) => location.href !== old && /,(left|right)(@|$)/.test(location.hash), placed);
    await page.keyboard.press('2');
    await page.getByRole('radio', { name: '45/60' }).focus();
    await page.keyboard.press('Space');
    await sentenceLike(page, /rule 45\/60/);
    await page.getByRole('radio', { name: '30/45' }).check();
  }, 120_000);

  test('feet or metres, and a sent address, give the same place', async () => {
    const { lon, lat, side } = site();
    const page = await at(`#/study/${lon},${lat},${side}`);
    expect(await sentenceLike(page, planned)).toMatch(/\d ft/);
    await page.getByRole('button', { name: 'metres', exact: true }).click();
    const metric = await sentenceLike(page, /\d m of (rope line|main)/);
    expect(metric).not.toMatch(/\d ft/);
    await page.getByRole('button', { name: 'feet', exact: true }).click();
    const { at: place } = addressOf(page.url());
    expect(place.split(',').map(Number)).toEqual([expect.closeTo(lon, 6), expect.closeTo(lat, 6)]);
  }, 60_000);

  test('own files open beside the demo; a wrong one leaves it open and says why', async () => {
    const demo = (name: string): string => join(root, 'data/demo', name);
    const watched = await openPage(here.browser, `${here.url}/#/open`, smallDesk, {
      map: 'there',
      kept: true,
    });
    const { page } = watched;
    await sentenceLike(page, /Open your own/);
    await page.locator('input[name=elevation]').setInputFiles(demo('sites.json'));
    await page.locator('input[name=roads]').setInputFiles(demo('roads.geojson'));
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    const refused = await sentenceLike(page, /sites\.json.*stays open/);
    expect(refused).toMatch(/TIFF/);
    await page.locator('input[name=elevation]').setInputFiles(demo('elevation-10m.tif'));
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await sentenceLike(page, /Tap the map beside a road/);
    expect(await page.locator('.head').textContent()).toContain('elevation-10m.tif');
    const { lon, lat } = site();
    await page.goto(`${here.url}/#/study/${lon},${lat}`);
    expect(await sentenceLike(page, /Plan as/)).toContain('Screening only');
    expect([...watched.strayRequests, ...watched.complaints]).toEqual([]);
    await watched.close();
  }, 120_000);

  test('a place far from any road and a place off the raster are told in one sentence', async () => {
    const page = await at('#/study/-128.0300,44.0050');
    await sentenceLike(page, /^No road within 50 m/);
    await page.goto(`${here.url}/#/study/-100,40`);
    await sentenceLike(page, /outside|No road/);
  }, 60_000);
});

/** The stop line above the sentence, as the command line prints it before the rest; empty where there is none. */
async function stopLine(page: Page): Promise<string> {
  const line = page.locator('.stop-line');
  return (await line.count()) > 0 ? `${await line.textContent()} ` : '';
}
