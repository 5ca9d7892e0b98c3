import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { localPlane } from '../../src/geo/index.ts';
import { openElevation, readGround } from '../../src/io/elevation/index.ts';
import { urlSource } from '../../src/io/web/index.ts';
import { heightAt } from '../../src/terrain/index.ts';
import { UserError } from '../../src/units/index.ts';
import { makeTiff, somewhere } from '../helpers/make-tiff.ts';
import { rangeServer } from '../helpers/range-server.ts';

const SIDE = 512;
const file = makeTiff({
  width: SIDE,
  height: SIDE,
  heights: Array.from({ length: SIDE * SIDE }, (_, i) => 500 + (i % SIDE) * 0.5 + Math.sin(i) * 0.1),
  tile: 64,
  ...somewhere,
});
let server: Awaited<ReturnType<typeof rangeServer>>;
beforeAll(async () => {
  server = await rangeServer(file);
});
afterAll(() => server.close());
beforeEach(() => server.reset());

const view = (bytes: ArrayBuffer) => Buffer.from(bytes);
const bytesAt = (offset: number, length: number) => Buffer.from(file.subarray(offset, offset + length));

describe('bytes behind an address', () => {
  it('are read by ranges, to the end and not past it', async () => {
    const source = urlSource(server.url);
    expect(view(await source.read(100, 50))).toEqual(bytesAt(100, 50));
    expect(server.log).toEqual([{ range: 'bytes=100-149', status: 206, bytes: 50 }]);
    expect(await source.size()).toBe(file.length);
    expect(view(await source.read(file.length - 10, 100))).toEqual(bytesAt(file.length - 10, 100));
    expect((await source.read(file.length + 5, 10)).byteLength).toBe(0);
    expect((await urlSource(server.url).read(file.length + 5, 10)).byteLength).toBe(0);
    expect(server.log.at(-1)?.status).toBe(416);
  });

  it('come whole, once, from a server that knows no ranges, where the file is small', async () => {
    server.manners.ranges = false;
    const source = urlSource(server.url);
    expect(view(await source.read(7, 9))).toEqual(bytesAt(7, 9));
    expect(view(await source.read(5000, 9))).toEqual(bytesAt(5000, 9));
    expect(server.log).toHaveLength(1);
  });

  it('are refused where the server knows no ranges and the file is large or of unknown size', async () => {
    server.manners.ranges = false;
    const read = () => urlSource(server.url, { wholeFileLimit: 1000 }).read(0, 9);
    await expect(read()).rejects.toThrow(
      `The server of ${server.url} sends only the whole file (1 MB), not parts of it; download it and open it from disk.`,
    );
    server.manners.chunked = true;
    await expect(read()).rejects.toThrow(/only the whole file \(of unknown size\)/);
  });

  it.each([
    [404, 'answered 404 Not Found; check the address.'],
    [403, 'answered 403 Forbidden; it needs a permission that is not there: download the file and open it from disk.'],
    [503, 'answered 503 Service Unavailable; the server is busy or broken: try again later.'],
  ])('name the status %d in the sentence', async (status, words) => {
    server.manners.status = status;
    await expect(openElevation(urlSource(server.url))).rejects.toThrow(`${server.url} ${words}`);
    await expect(openElevation(urlSource(server.url))).rejects.toBeInstanceOf(UserError);
  });

  it('say when nobody is there', async () => {
    const nowhere = await rangeServer(file);
    await nowhere.close();
    await expect(urlSource(nowhere.url).read(0, 10)).rejects.toThrow(
      /cannot be reached, or its server does not let this page read it/,
    );
  });

  it('say when the connection breaks off, when the file changes, and when other bytes come than were asked for', async () => {
    server.manners.share = 0.5;
    await expect(urlSource(server.url).read(0, 100_000)).rejects.toThrow(/broke off while it was read; try again/);
    server.reset();
    const source = urlSource(server.url);
    await source.read(0, 10);
    server.manners.etag = '"2"';
    await expect(source.read(20, 10)).rejects.toThrow(
      `${server.url} changed on its server while it was read; open it again.`,
    );
    server.reset();
    server.manners.shift = 3;
    await expect(urlSource(server.url).read(0, 10)).rejects.toThrow(/sent bytes from 3 where 0 was asked for/);
  });

  it('are given up with the signal, at the server too', async () => {
    server.manners.silent = true;
    const before = server.aborted();
    const abort = new AbortController();
    const reading = urlSource(server.url).read(0, 10, abort.signal);
    const settled = expect(reading).rejects.toThrow('enough');
    await expect.poll(() => server.log.length).toBe(1);
    abort.abort(new Error('enough'));
    await settled;
    await expect.poll(() => server.aborted()).toBe(before + 1);
  });

  it('are given up, and not called short, where whoever answers in between ends them as empty', async () => {
    const abort = new AbortController();
    const empty = async (): Promise<Response> => {
      abort.abort(new Error('enough'));
      return new Response(new Uint8Array(0), { status: 206, headers: { 'content-range': 'bytes 0-9/1000' } });
    };
    await expect(urlSource('https://x.invalid/a.tif', { fetch: empty }).read(0, 10, abort.signal)).rejects.toThrow(
      'enough',
    );
    const short = urlSource('https://x.invalid/a.tif', { fetch: empty }).read(0, 10);
    await expect(short).rejects.toThrow('sent 0 bytes where 10 were asked for');
  });

  it('are asked for once more where they ended early', async () => {
    let answers = 0;
    const once = async (): Promise<Response> => {
      answers++;
      const bytes = new Uint8Array(answers === 1 ? 3 : 10).fill(answers);
      return new Response(bytes, { status: 206, headers: { 'content-range': 'bytes 0-9/1000' } });
    };
    const bytes = await urlSource('https://x.invalid/a.tif', { fetch: once }).read(0, 10);
    expect([...new Uint8Array(bytes)]).toEqual(new Array(10).fill(2));
    expect(answers).toBe(2);
  });
});

describe('ground behind an address', () => {
  const here = async (source: Awaited<ReturnType<typeof openElevation>>) => {
    const { west, east, south, north } = source.bounds;
    return localPlane({ lon: (west * 3 + east) / 4, lat: (south + north) / 2 });
  };

  it('touches only the tiles that it needs, in few requests, and nothing twice', async () => {
    const source = await openElevation(urlSource(server.url));
    expect(server.log.length).toBeLessThanOrEqual(2);
    const opened = server.log.length;
    const plane = await here(source);
    const ground = await readGround([source], plane, { x: 0, y: 0 }, 40);
    const tiles = server.log.slice(opened);
    // A window of about 90 cells meets at most 3 × 3 tiles of 64, 16 KiB each, in three rows that lie apart in the file.
    expect(tiles.length).toBeLessThanOrEqual(3);
    expect(tiles.reduce((sum, request) => sum + request.bytes, 0)).toBeLessThanOrEqual(9 * 64 * 64 * 4);
    expect(heightAt(ground, 0, 0)).toBeGreaterThan(500);
    const before = server.log.length;
    await readGround([source], plane, { x: 3, y: -2 }, 38);
    expect(server.log).toHaveLength(before);
  });

  it('is the same whether the server knows ranges or not', async () => {
    const source = await openElevation(urlSource(server.url));
    const plane = await here(source);
    const first = heightAt(await readGround([source], plane, { x: 0, y: 0 }, 20), 0.3, 0.7);
    server.manners.ranges = false;
    const other = await openElevation(urlSource(server.url));
    expect(heightAt(await readGround([other], plane, { x: 0, y: 0 }, 20), 0.3, 0.7)).toBe(first);
  });

  it('can be asked for again after a failure and after being given up', async () => {
    const source = await openElevation(urlSource(server.url));
    const plane = await here(source);
    server.manners.status = 503;
    await expect(readGround([source], plane, { x: 0, y: 0 }, 20)).rejects.toThrow(/503/);
    server.reset();
    server.manners.silent = true;
    const abort = new AbortController();
    const given = readGround([source], plane, { x: 0, y: 0 }, 20, abort.signal);
    const settled = expect(given).rejects.toThrow('moved on');
    await expect.poll(() => server.log.length).toBeGreaterThan(0);
    abort.abort(new Error('moved on'));
    server.reset();
    await settled;
    // Asked at once, before the aborted requests have come to rest.
    expect(heightAt(await readGround([source], plane, { x: 0, y: 0 }, 20), 0, 0)).toBeGreaterThan(500);
  });

  it('gives up at once where the signal was aborted before, and leaves nothing behind', async () => {
    const source = await openElevation(urlSource(server.url));
    const plane = await here(source);
    const opened = server.log.length;
    const early = AbortSignal.abort(new Error('never mind'));
    await expect(readGround([source], plane, { x: 0, y: 0 }, 20, early)).rejects.toThrow('never mind');
    const abort = new AbortController();
    const late = readGround([source], plane, { x: 0, y: 0 }, 20, abort.signal);
    abort.abort(new Error('never mind'));
    await expect(late).rejects.toThrow('never mind');
    expect(server.log).toHaveLength(opened);
  });
});
