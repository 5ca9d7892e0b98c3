import { mkdirSync } from 'node:fs';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { scratch } from '../../helpers/gdal.ts';
import { chromiumPath, testArguments, withoutChromium } from '../chromium.ts';
import { drawNothing } from '../page.ts';
import { type MapPage, serveMapPage } from './map-page.ts';

const folder = scratch();

describe.skipIf(withoutChromium())('files kept on the device', () => {
  let site: MapPage;
  let context: BrowserContext;
  const profile = folder.path('profile');

  /** A browser started anew on the same profile, as after a restart of the machine. */
  const start = async (): Promise<Page> => {
    await context?.close();
    context = await chromium.launchPersistentContext(profile, {
      executablePath: chromiumPath()!,
      args: testArguments,
    });
    const page = await context.newPage();
    await page.addInitScript(drawNothing);
    await page.goto(site.url);
    await page.evaluate(() => window.mapReady);
    return page;
  };
  /** Keeps the demo's coarse raster and its roads; gives up after the first bytes where `stop`. */
  const keepDemo = (page: Page, stop: boolean) =>
    page.evaluate(async (givenUp) => {
      const file = async (name: string): Promise<File> => {
        const answer = await fetch(`/demo/${name}`);
        return new File([await answer.blob()], name);
      };
      const abort = new AbortController();
      const steps: [number, number][] = [];
      const files = [
        { role: 'elevation' as const, file: await file('elevation-10m.tif') },
        { role: 'roads' as const, file: await file('roads.geojson') },
      ];
      const set = { name: 'North county', options: { verticalRmseM: 0.2 }, files };
      const onProgress = ({ done, of }: { done: number; of: number }): void => {
        steps.push([done, of]);
        if (givenUp && done > 0) abort.abort();
      };
      const end = await window.keeping.keep(set, onProgress, abort.signal).then(
        () => 'kept',
        (error: Error) => error.name,
      );
      return { steps, end, bytes: files.reduce((sum, one) => sum + one.file.size, 0) };
    }, stop);

  beforeAll(async () => {
    mkdirSync(profile, { recursive: true });
    site = await serveMapPage();
  }, 120_000);
  afterAll(async () => {
    await context?.close();
    site?.stop();
    folder.remove();
  });

  test('are copied in steps, are there whole after a restart, and are read from there', async () => {
    const page = await start();
    const { steps, end, bytes } = await keepDemo(page, false);
    expect(end).toBe('kept');
    expect(steps[0]).toEqual([0, bytes]);
    expect(steps.at(-1)).toEqual([bytes, bytes]);
    expect(steps.length).toBeGreaterThan(2);
    const again = await start();
    const [set] = await again.evaluate(() => window.keeping.kept());
    expect(set).toMatchObject({ name: 'North county', bytes, options: { verticalRmseM: 0.2 } });
    expect(set!.files.map(({ role, name }) => `${role} ${name}`)).toEqual([
      'elevation elevation-10m.tif',
      'roads roads.geojson',
    ]);
    expect(await again.evaluate((id) => window.openKept(id), set!.id)).toBe('elevation-10m.tif');
    const { usedBytes } = await again.evaluate(() => window.keeping.storageUsed());
    expect(usedBytes).toBeGreaterThan(bytes);
    await again.evaluate((id) => window.keeping.forget(id), set!.id);
    expect(await again.evaluate(() => window.keeping.kept())).toEqual([]);
    const gone = await again.evaluate((id) => window.openKept(id).catch((error: Error) => error.message), set!.id);
    expect(gone).toBe('These files are no longer kept on this device; choose them again.');
  }, 90_000);

  test('leave nothing behind when given up, and what a crash left half written is cleared away', async () => {
    const page = await start();
    expect((await keepDemo(page, true)).end).toBe('AbortError');
    const left = () =>
      page.evaluate(async () => {
        const root = await navigator.storage.getDirectory();
        const names: string[] = [];
        for await (const name of (await root.getDirectoryHandle('kept-files')).keys()) names.push(name);
        return names;
      });
    expect(await left()).toEqual([]);
    await page.evaluate(async () => {
      const root = await navigator.storage.getDirectory();
      const half = await (await root.getDirectoryHandle('kept-files')).getDirectoryHandle('half', { create: true });
      const writing = await (await half.getFileHandle('0', { create: true })).createWritable();
      await writing.write('part of a raster');
      await writing.close();
    });
    expect(await left()).toEqual(['half']);
    expect(await page.evaluate(() => window.keeping.kept())).toEqual([]);
    expect(await left()).toEqual([]);
  }, 60_000);

  test('that do not fit are refused before anything is written', async () => {
    const page = await start();
    const sentence = await page.evaluate(async () => {
      const estimate = navigator.storage.estimate.bind(navigator.storage);
      navigator.storage.estimate = async () => ({ ...(await estimate()), usage: 0, quota: 30 * 1024 * 1024 });
      const file = new File([new Uint8Array(12 * 1024 * 1024)], 'big.tif');
      const files = [{ role: 'elevation' as const, file }];
      return window.keeping.keep({ name: 'Big', options: {}, files }).then(
        () => 'kept',
        (error: Error) => error.message,
      );
    });
    expect(sentence).toBe(
      'The files do not fit on this device: 12 MB are needed, 30 MB are free. Remove kept files, or open them without keeping.',
    );
  }, 60_000);
});
