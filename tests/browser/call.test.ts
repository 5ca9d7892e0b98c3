import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { root } from './app.ts';
import { type CallServer, callServer } from './call-server.ts';
import { launchChromium, withoutChromium } from './chromium.ts';
import { openPage, phone, type WatchedPage } from './page.ts';

const folder = mkdtempSync(join(tmpdir(), 'brinkbook-call-'));
const axe = readFileSync(join(root, 'node_modules/axe-core/axe.min.js'), 'utf8');

describe.skipIf(withoutChromium())('the call view on a phone', () => {
  let server: CallServer;
  let browser: Browser;
  let device: WatchedPage;
  beforeAll(async () => {
    server = await callServer(join(folder, 'app'));
    browser = await launchChromium();
    device = await openPage(browser, `${server.url}/call/`, phone, { kept: true });
    await device.page.getByText('Kept on this device: app, 3 of 3 sites').waitFor({ timeout: 90_000 });
  }, 300_000);
  afterEach(() => {
    expect(device.strayRequests).toEqual([]);
    expect(device.complaints).toEqual([]);
  });
  afterAll(async () => {
    await browser?.close();
    await server?.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  /** The device's page at an address, started anew. */
  async function visit(hash: string): Promise<Page> {
    const { page } = device;
    await page.goto('about:blank');
    await page.goto(`${server.url}/call/${hash}`);
    return page;
  }
  const sentence = async (page: Page): Promise<string> =>
    ((await page.getByTestId('sentence').textContent({ timeout: 30_000 })) ?? '').replaceAll('\u00a0', ' ');

  test('the sentence comes first, the caution is whole, nothing small to touch, contrast AAA by night and by day', async () => {
    const page = await visit('#site=kettle-bend');
    await page.evaluate(axe);
    for (const hash of ['#site=kettle-bend', '#site=broken-shelf', '#at=43.99952,-128.01562,8', '#']) {
      await page.goto(`${server.url}/call/${hash}`);
      await page.waitForSelector(hash === '#' ? '.site' : hash.startsWith('#at') ? '.edges li' : '.data', {
        timeout: 30_000,
      });
      if (hash.startsWith('#site')) {
        // What a reader hears first is the study's own sentence.
        const first = await page.evaluate(
          () =>
            document.createTreeWalker(document.querySelector('#call')!, NodeFilter.SHOW_TEXT).nextNode()?.textContent,
        );
        expect(first?.replaceAll('\u00a0', ' ')).toBe(await sentence(page));
      }
      // Set in wider letters, nothing runs over its neighbour or off the screen.
      const set = (spacing: string) =>
        page.evaluate((words) => {
          for (const part of document.querySelectorAll<HTMLElement>('.plan *')) part.style.letterSpacing = words;
        }, spacing);
      await set('0.12em');
      expect([hash, await page.evaluate(overlaps)]).toEqual([hash, []]);
      await set('');
      const caution = (await page.locator('.caution').boundingBox())!;
      expect(caution.y + caution.height).toBeLessThanOrEqual(844);
      expect(await page.locator('.caution').textContent()).toContain('Verify on site.');
      for (const light of ['night', 'day'] as const) {
        await page.evaluate((tone) => {
          document.documentElement.dataset.light = tone;
        }, light);
        expect([hash, light, await page.evaluate(runAxe)]).toEqual([hash, light, []]);
      }
      expect([hash, await page.evaluate(smallTargets)]).toEqual([hash, []]);
    }
  }, 180_000);

  test('planned as high: the stop line, whom to call, no haul, no minutes, no team', async () => {
    const page = await visit('#site=broken-shelf');
    expect(await sentence(page)).toMatch(/^Technical rope team needed\./);
    const plan = page.locator('.plan');
    await plan.locator('.stop-line').waitFor();
    const words = (await plan.locator('.rows').textContent())!;
    expect(words).not.toMatch(/Turned|Straight|People|min\b|reset/);
    expect(await plan.locator('.calls li').count()).toBeGreaterThan(0);
    expect(await plan.locator('.calls a[href^="tel:"]').count()).toBeGreaterThan(0);
  }, 120_000);

  test('another weather is worked out in place and improves nothing; night is worked out anew', async () => {
    const page = await visit('#site=third-culvert');
    const hold = async (): Promise<number> => {
      const words = await page.locator('.conditions .on small').textContent();
      return words === 'no anchor' ? 0 : Number(/[\d.]+/.exec(words!)![0]);
    };
    await page.locator('.conditions .on small').waitFor();
    const dry = await hold();
    expect(dry).toBeGreaterThan(0);
    await page.getByRole('radio', { name: /^wet/ }).click();
    await expect.poll(() => sentence(page)).toMatch(/for wet/);
    const wet = await hold();
    expect(wet).toBeLessThanOrEqual(dry);
    await page.getByRole('radio', { name: /^ice/ }).click();
    await expect.poll(() => sentence(page)).toMatch(/for ice/);
    expect(await hold()).toBeLessThanOrEqual(wet);
    await page.getByRole('radio', { name: /^dry/ }).click();
    await page.getByRole('button', { name: 'night' }).click();
    await expect.poll(() => sentence(page), { timeout: 30_000 }).toMatch(/for night/);
  }, 120_000);

  test('a device below the road is offered the edge above, the site on it, and the edge itself', async () => {
    const page = await visit('#');
    await page.context().grantPermissions(['geolocation']);
    await page.context().setGeolocation({ latitude: 43.99952, longitude: -128.01562, accuracy: 8 });
    await page.getByRole('button', { name: 'Roads around this device' }).click();
    const first = page.locator('.edges li').first();
    await first.waitFor({ timeout: 30_000 });
    expect(await first.textContent()).toMatch(
      /Lantern Creek Road, mile 4\.7\d, south side.*drop \d+ to \d+ ft.*straight up/,
    );
    expect(page.url()).toMatch(/#at=43\.9995200,-128\.0156200,8$/);
    await first.getByRole('button', { name: 'Work out' }).click();
    expect(await sentence(page)).toMatch(/^Plan as/);
    await page.getByText('Nobody has surveyed it.').waitFor();
    await page.goBack();
    await page.locator('.edges .site').first().click();
    await page.getByRole('heading', { name: 'Kettle Bend' }).waitFor();
  }, 120_000);

  test('how far the site is by road stands at its name, once the device may say where it is', async () => {
    // A device of its own, which nobody has asked anything yet.
    const asked = await openPage(browser, `${server.url}/call/#site=kettle-bend`, phone, { kept: true });
    const { page } = asked;
    const context = page.context();
    await page.locator('.where', { hasText: /^Lantern Creek Road, mile 4\.7\d, downhill side, south/ }).waitFor();
    const ask = page.getByRole('button', { name: 'how far?' });
    await ask.waitFor();
    await context.grantPermissions(['geolocation']);
    // On the road by the next site that is surveyed on it.
    await context.setGeolocation({ latitude: 43.99987, longitude: -128.01212, accuracy: 5 });
    await ask.click();
    await page.locator('.ahead', { hasText: /^\d+(\.\d)? (mi|ft) by road$/ }).waitFor({ timeout: 30_000 });
    // Allowed once, it is told without a question.
    await page.reload();
    await page.locator('.ahead', { hasText: /by road$/ }).waitFor({ timeout: 30_000 });
    expect(asked.strayRequests).toEqual([]);
    await asked.close();
  }, 120_000);

  test('a position far from every surveyed site says so', async () => {
    // On Cinder Grade Road's upper end, some hundred metres past the last of the three sites.
    const page = await visit('#at=44.00493,-128.00108,5');
    await page.getByText(/No surveyed site here: the nearest, .+, is .+ along the road/).waitFor({ timeout: 30_000 });
  }, 120_000);

  test('a position that looks wrong is questioned, an address that is none is read as typed', async () => {
    const page = await visit('#');
    const box = page.getByLabel('Road and mile, site or position');
    await box.fill('43.9995, 128.0156');
    await page.getByText(/lies outside the district; with the other sign of the longitude/).waitFor();
    await box.press('Enter');
    // Enter takes nothing that is in question.
    expect(page.url()).toMatch(/\/call\/#?$/);
    await page.getByRole('button', { name: 'Yes: 43.99950, -128.01560' }).click();
    await page.locator('.edges li').first().waitFor({ timeout: 30_000 });
    await page.goto(`${server.url}/call/#at=N43%2059.970%20W128%2000.936`);
    await page.locator('.hits button').first().waitFor();
    expect(await page.locator('.hits').textContent()).toContain('43.99950, -128.01560');
  }, 120_000);

  test('what is typed before the district is there is read once it is', async () => {
    const { page, close } = await openPage(browser, `${server.url}/call/`, phone, { kept: true });
    const box = page.getByLabel('Road and mile, site or position');
    await box.fill('43.9995, 128.0156');
    await page.getByText(/lies outside the district; with the other sign of the longitude/).waitFor();
    expect(await box.inputValue()).toBe('43.9995, 128.0156');
    await close();
  }, 120_000);
});

/** Runs in the page: contrast AAA and what else axe finds. */
async function runAxe(): Promise<string[]> {
  const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
  // biome-ignore lint/suspicious/noExplicitAny: axe puts itself on the window.
  const axe = (window as any).axe;
  const { violations, passes } = await axe.run(document, {
    runOnly: { type: 'tag', values: tags },
    rules: { 'color-contrast-enhanced': { enabled: true } },
  });
  if (!passes.some(({ id }: { id: string }) => id === 'color-contrast-enhanced')) return ['no contrast was measured'];
  return violations.map(
    (v: { id: string; nodes: { html: string }[] }) => `${v.id}: ${v.nodes.map((n) => n.html).join(' | ')}`,
  );
}

/** Runs in the page: what can be touched and is under 44 pixels high or wide; links in running text aside. */
function smallTargets(): string[] {
  return [...document.querySelectorAll('button, input:not([type=radio]), label, a')].flatMap((target) => {
    const { width, height } = target.getBoundingClientRect();
    return width === 0 || (width >= 44 && height >= 44) ? [] : [`${target.outerHTML.slice(0, 80)} ${width}×${height}`];
  });
}

/** Switches and rows of the plan that run out of their place. */
function overlaps(): string[] {
  const parts = [
    ...document.querySelectorAll<HTMLElement>('.plan .conditions label, .plan .conditions button, .plan dt'),
  ];
  return parts
    .filter((part) => part.scrollWidth > part.clientWidth + 1 || part.getBoundingClientRect().right > innerWidth)
    .map(({ textContent }) => textContent ?? '');
}
