import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { scratch } from '../helpers/gdal.ts';
import { type RunningApp, startApp } from './app.ts';
import { chromiumPath, testArguments, withoutChromium } from './chromium.ts';
import { drawNothing, pointAt, sentenceLike, stopReading } from './page.ts';

/** A shared machine may take a while. */
const patient = { timeout: 30_000 };

interface Running {
  readonly page: Page;
  /** As a dying battery would. */
  kill(): Promise<void>;
}

describe.skipIf(withoutChromium())('a browser that dies', () => {
  const folder = scratch();
  let app: RunningApp;
  let running: Running | null = null;
  beforeAll(async () => {
    app = await startApp();
  }, 240_000);
  afterAll(async () => {
    await running?.kill();
    await app?.stop();
    folder.remove();
  });

  /** A Chromium of one profile on a page of the app, as a process of its own that can be killed. */
  async function start(hash: string): Promise<Running> {
    const profile = folder.path('profile');
    const port = `${profile}/DevToolsActivePort`;
    rmSync(port, { force: true });
    const flags = [
      ...testArguments,
      '--headless',
      '--remote-debugging-port=0',
      '--force-device-scale-factor=0.5',
      `--user-data-dir=${profile}`,
    ];
    const started = spawn(chromiumPath()!, [...flags, 'about:blank'], { stdio: 'ignore', detached: true });
    const told = (): string => (existsSync(port) ? readFileSync(port, 'utf8') : '');
    await expect.poll(told, patient).toMatch(/^\d+\n/);
    const browser = await chromium.connectOverCDP(`http://127.0.0.1:${told().split('\n')[0]}`);
    const page = await browser.contexts()[0]!.newPage();
    await page.addInitScript(stopReading);
    await page.addInitScript(drawNothing);
    await page.setViewportSize({ width: 1110, height: 700 });
    await page.goto(`${app.url}/${hash}`);
    return { page, kill: () => kill(started, browser) };
  }

  test('leaves every edit there: name, moved site, mark, patient point, pinned anchor', async () => {
    running = await start('#/survey/third-culvert');
    let { page } = running;
    await sentenceLike(page, /Plan as/);
    await page.locator('.study-point').first().waitFor();
    const { x, y } = await pointAt(page);
    const name = page.getByLabel('Name', { exact: true });
    await name.fill('Third Culvert, kept');
    await name.press('Enter');
    await page.locator('.kept', { hasText: /^saved$/ }).waitFor(patient);

    // The site is dragged along the road and undone once: the drag is a command of its own.
    const placed = async (): Promise<string> => (await page.locator('.notes-top').textContent())!;
    const before = await placed();
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 30, y - 2, { steps: 4 });
    await page.mouse.up();
    await page.locator('.map-flag', { hasText: 'when driving' }).waitFor(patient);
    await expect.poll(placed, patient).not.toBe(before);

    await page.locator('.maplibregl-canvas').focus();
    await page.keyboard.press('t');
    await page.mouse.click(x - 60, y + 40);
    const marks = async (): Promise<string[]> => (await page.locator('.marks-of button').allTextContents()).sort();
    await expect.poll(marks, patient).toEqual(['third culvert', 'tree']);
    await page.keyboard.press('Escape');
    await page.locator('.maplibregl-canvas').focus();
    await page.keyboard.press('x');
    await page.mouse.click(x + 20, y + 60);
    await page.getByRole('button', { name: 'no patient point' }).waitFor(patient);
    await page.keyboard.press('2');
    await page.getByRole('button', { name: 'Anchor pin', exact: true }).click();
    await page.getByRole('button', { name: 'Anchor pinned', exact: true }).waitFor(patient);

    const moved = /Road, [\d,]+ ft along it/.exec(await placed())![0];
    await running.kill();
    running = null;
    running = await start('#/survey/third-culvert');
    ({ page } = running);
    await sentenceLike(page, /Plan as/);
    await expect.poll(() => page.getByLabel('Name', { exact: true }).inputValue(), patient).toBe('Third Culvert, kept');
    expect(await page.locator('.notes-top').textContent()).toContain(moved);
    expect(await marks()).toEqual(['third culvert', 'tree']);
    await page.getByRole('button', { name: 'no patient point' }).waitFor(patient);
    await page.getByRole('button', { name: 'Study', exact: true }).click();
    await page.getByRole('button', { name: 'Anchor pinned', exact: true }).waitFor(patient);
  }, 180_000);
});

/** Ends the browser that this test started, with its children; resolves when it is gone. */
async function kill(started: ChildProcess, browser: Browser): Promise<void> {
  const gone = new Promise((resolve) => started.once('exit', resolve));
  process.kill(-started.pid!, 'SIGKILL');
  await gone;
  await browser.close().catch(() => undefined);
}
