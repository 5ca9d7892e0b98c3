import { readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { policyFor } from '../../config/csp.mjs';
import { writeNeighbour } from '../../src/io/exchange/index.ts';
import { hostileTexts, sampleBook } from '../helpers/sample-book.ts';
import { builtPage } from './built-page.ts';
import { launchChromium, withoutChromium } from './chromium.ts';
import type { FilesPage } from './files-page.ts';

describe.skipIf(withoutChromium())('files in a browser', () => {
  let browser: Browser;
  let server: Server;
  let url: string;

  beforeAll(async () => {
    const out = await builtPage('files', 'tests/browser/files-page.ts', {
      rolldownOptions: { output: { entryFileNames: '[name].js', chunkFileNames: '[name].js' } },
    });
    server = createServer((request, response) => {
      const path = request.url ?? '/';
      response.setHeader('Content-Security-Policy', policyFor(path));
      response.setHeader('Content-Type', path === '/' ? 'text/html' : 'text/javascript');
      try {
        response.end(
          path === '/'
            ? '<!doctype html><title>x</title><script type="module" src="/files.js"></script>'
            : readFileSync(join(out, path)),
        );
      } catch {
        response.writeHead(404).end();
      }
    });
    await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
    url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
    browser = await launchChromium();
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    server?.close();
  });

  it('the worker shrinks a photo upright, reads its place, keeps the picture alone, and reads and writes books', async () => {
    const page = await browser.newPage();
    await page.goto(url);
    await page.waitForFunction(() => 'files' in window);
    const take = (width: number, height: number, orientation: number) =>
      page.evaluate(
        ([w, h, o]) => (window as unknown as FilesPage).files.takeHere(w!, h!, o!),
        [width, height, orientation],
      );
    const large = await take(4000, 3000, 6);
    expect(large.fields).toMatchObject({ type: 'image/jpeg', widthPx: 1500, heightPx: 2000, takenOn: '2026-05-03' });
    expect(large.at).toEqual({ lon: -128.0456, lat: 44.0123 });
    expect([large.givenHeldSecret, large.holdsSecret]).toEqual([true, false]);
    // Orientation 6: the stored left side is the top.
    expect(large.top[0]! > 200 && large.top[1]! < 60).toBe(true);
    expect(large.bottom[1]! > 200 && large.bottom[0]! < 60).toBe(true);
    const small = await take(400, 300, 1);
    expect([small.fields.widthPx, small.fields.heightPx]).toEqual([400, 300]);
    const no = await page.evaluate(() => (window as unknown as FilesPage).files.refusal('no picture'));
    const book = await page.evaluate(() => (window as unknown as FilesPage).files.bookHere());
    expect(book.edits).toBe(0);
    expect(book.cut).toMatch(/^a\.brinkbook [^\n]+take another copy of the book/);
    expect(no).toMatch(/^x\.svg is no picture that can be read; take the photo as JPEG, PNG or WebP\.$/);
    await page.close();
  });

  it('a neighbour’s page with hostile text in it runs nothing, asks for nothing and keeps its order', async () => {
    const page = await browser.newPage();
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    page.on('dialog', (dialog) => asked.push(`dialog ${dialog.message()}`));
    for (const text of hostileTexts) {
      const html = await writeNeighbour(sampleBook(text), {
        sites: null,
        patientPhotos: false,
        units: 'us',
        photo: async () => null,
      });
      // Without its own policy as well: the text alone must be harmless.
      for (const source of [html, html.replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, '')]) {
        await page.setContent(source);
        const found = await page.evaluate(() => ({
          scripts: document.querySelectorAll('script, svg, img, iframe, object, form, a, link').length,
          sections: document.querySelectorAll('section').length,
          handlers: [...document.querySelectorAll('*')]
            .flatMap((element) => [...element.attributes])
            .filter(({ name }) => name.startsWith('on')).length,
        }));
        expect(found).toEqual({ scripts: 0, sections: 2, handlers: 0 });
      }
    }
    expect(asked).toEqual([]);
    await page.close();
  });
});
