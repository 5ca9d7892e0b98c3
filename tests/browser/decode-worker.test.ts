import { readFileSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { fromArrayBuffer } from 'geotiff';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pagePolicy, policyFor } from '../../config/csp.mjs';
import type { BlockFormat, DecodePool } from '../../src/io/index.ts';
import { hasGdal, scratch, translate } from '../helpers/gdal.ts';
import { makeTiff, somewhere } from '../helpers/make-tiff.ts';
import { builtPage } from './built-page.ts';
import { launchChromium, withoutChromium } from './chromium.ts';

const left = withoutChromium() || !hasGdal('packings in the browser');
const folder = scratch();
const SIDE = 64;
const heights = Float32Array.from({ length: SIDE * SIDE }, (_, i) => 700 + (i % SIDE) * 0.25 + Math.floor(i / SIDE));

/** The one block of the raster as GDAL packs it. */
async function packed(compression: string): Promise<{ format: BlockFormat; bytes: number[] }> {
  const path = folder.path(`${compression}.tif`);
  translate(folder.path('plain.tif'), path, '-co', `COMPRESS=${compression}`, '-co', `BLOCKYSIZE=${SIDE}`);
  const file = new Uint8Array(readFileSync(path)).buffer;
  const directory = (await (await fromArrayBuffer(file)).getImage()).fileDirectory;
  const offset = Number(await directory.loadValueIndexed('StripOffsets', 0));
  const length = Number(await directory.loadValueIndexed('StripByteCounts', 0));
  const lerc = await directory.loadValue('LercParameters');
  return {
    bytes: [...new Uint8Array(file, offset, length)],
    format: {
      compression: directory.getValue('Compression') ?? 1,
      predictor: 1,
      sample: 'float32',
      littleEndian: true,
      width: SIDE,
      height: SIDE,
      lercPacking: Number(lerc?.[1] ?? 0),
      noData: null,
      scale: 1,
      offset: 0,
    },
  };
}

describe.skipIf(left)('the decoding worker in a browser under the content security policy', () => {
  let server: Server;
  let browser: Browser;
  let strict = false;
  let url: string;

  beforeAll(async () => {
    writeFileSync(folder.path('plain.tif'), makeTiff({ width: SIDE, height: SIDE, heights, ...somewhere }));
    const out = await builtPage('pool', 'src/workers/web/decode-pool.ts', {
      rolldownOptions: {
        output: { entryFileNames: '[name].js', chunkFileNames: 'assets/[name]-[hash].js' },
        preserveEntrySignatures: 'strict',
      },
    });
    const made: Readonly<Record<string, string>> = {
      '/': '<!doctype html><title>x</title><script type="module" src="/page.js"></script>',
      '/page.js': 'import { webDecodePool } from "/pool.js"; window.startPool = webDecodePool;',
    };
    server = createServer((request, response) => {
      const path = request.url ?? '/';
      response.setHeader('Content-Security-Policy', strict ? pagePolicy : policyFor(path));
      response.setHeader('Content-Type', path === '/' ? 'text/html' : 'text/javascript');
      try {
        response.end(made[path] ?? readFileSync(join(out, path)));
      } catch {
        response.writeHead(404).end();
      }
    });
    await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
    url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
    browser = await launchChromium();
  });
  afterAll(async () => {
    await browser?.close();
    server?.close();
    folder.remove();
  });

  /** What a pool of one worker answers for a block: its heights, or the sentence. */
  async function answer(page: Page, compression: string): Promise<number[] | string> {
    return page.evaluate(
      async ({ format, bytes }) => {
        const pool = (window as unknown as { startPool(size: number): DecodePool }).startPool(1);
        return pool
          .decode(format, Uint8Array.from(bytes).buffer)
          .then((found) => [...found])
          .catch((error: Error) => error.message)
          .finally(() => pool.close());
      },
      await packed(compression),
    );
  }

  it('unpacks everything where its own answer allows WebAssembly, the page itself allowing none', async () => {
    strict = false;
    const page = await browser.newPage();
    await page.goto(url);
    for (const compression of ['NONE', 'LZW', 'DEFLATE', 'PACKBITS', 'ZSTD', 'LERC', 'LERC_DEFLATE', 'LERC_ZSTD']) {
      expect(await answer(page, compression), compression).toEqual([...heights]);
    }
    const refused = await page.evaluate(() =>
      WebAssembly.compile(Uint8Array.of(0, 97, 115, 109, 1, 0, 0, 0)).then(
        () => 'allowed',
        (error: Error) => error.name,
      ),
    );
    expect(refused).toBe('CompileError');
    await page.close();
  });

  it('says so where a host does not allow it, and unpacks the rest', async () => {
    strict = true;
    const page = await browser.newPage();
    await page.goto(url);
    for (const compression of ['LZW', 'DEFLATE', 'LERC', 'LERC_DEFLATE']) {
      expect(await answer(page, compression), compression).toEqual([...heights]);
    }
    for (const compression of ['ZSTD', 'LERC_ZSTD']) {
      expect(await answer(page, compression), compression).toBe(
        'The raster is compressed with zstd, whose decoder this page may not run; write it again with deflate, for example "gdal_translate -co COMPRESS=DEFLATE".',
      );
    }
    await page.close();
  });
});
