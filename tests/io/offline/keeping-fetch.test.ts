import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keepingFetch, memoryStore, type ReadOrder } from '../../../src/io/offline/index.ts';
import { urlSource } from '../../../src/io/web/index.ts';

const URL_OF = 'https://example.test/ground.tif';
const PAGE = 256 * 1024;
const SIZE = 3 * PAGE + 12_345;
const file = Uint8Array.from({ length: SIZE }, (_, i) => (i * 31 + (i >> 9)) & 255);

/** A server of one file with ranges, its version and its presence in a test's hands. */
function server() {
  const state = { up: true, version: '"1"', bytes: file, asked: [] as string[] };
  const ask = (async (_url: string, init: RequestInit = {}) => {
    if (!state.up) throw new TypeError('Failed to fetch');
    const range = new Headers(init.headers).get('range');
    state.asked.push(range ?? 'whole');
    const found = /bytes=(\d+)-(\d+)/.exec(range ?? '');
    if (!found) return new Response(state.bytes, { headers: { etag: state.version } });
    const [from, to] = [Number(found[1]), Math.min(Number(found[2]), state.bytes.length - 1)];
    return new Response(state.bytes.slice(from, to + 1), {
      status: 206,
      headers: { etag: state.version, 'content-range': `bytes ${from}-${to}/${state.bytes.length}` },
    });
  }) as typeof fetch;
  return { state, ask };
}

const bytesOf = async (ask: typeof fetch, from: number, length: number): Promise<Uint8Array> =>
  new Uint8Array(await urlSource(URL_OF, { fetch: ask }).read(from, length));

describe('reading files that are kept in pages', () => {
  it('answers without a network any part of what was read, byte by byte', async () => {
    const { state, ask } = server();
    const store = memoryStore();
    let order: ReadOrder = 'keep';
    const read = keepingFetch(store, () => order, ask);
    expect(await bytesOf(read, 100, 1000)).toEqual(file.slice(100, 1100));
    expect(await bytesOf(read, PAGE - 10, 20)).toEqual(file.slice(PAGE - 10, PAGE + 10));
    expect(await bytesOf(read, SIZE - 50, 500)).toEqual(file.slice(SIZE - 50));
    order = 'kept first';
    state.up = false;
    // Pages 0, 1 and 3 were touched: all of them can be read, across their seam too; page 2 cannot.
    await fc.assert(
      fc.asyncProperty(fc.nat(2 * PAGE - 1), fc.integer({ min: 1, max: 5000 }), async (from, length) => {
        const most = Math.min(length, 2 * PAGE - from);
        expect(await bytesOf(read, from, most)).toEqual(file.slice(from, from + most));
      }),
      { seed: 3, numRuns: 40 },
    );
    expect(await bytesOf(read, 3 * PAGE, 12_345)).toEqual(file.slice(3 * PAGE));
    await expect(bytesOf(read, 2 * PAGE - 5, 10)).rejects.toThrow(/cannot be reached/);
    expect(await bytesOf(read, 2 * PAGE - 5, 5)).toEqual(file.slice(2 * PAGE - 5, 2 * PAGE));
  });

  it('takes what is kept without asking the network, or asks the network first, as told', async () => {
    const { state, ask } = server();
    const store = memoryStore();
    let order: ReadOrder = 'keep';
    const read = keepingFetch(store, () => order, ask);
    await bytesOf(read, 0, 10);
    state.asked.length = 0;
    order = 'kept first';
    await bytesOf(read, 5, 10);
    expect(state.asked).toEqual([]);
    order = 'network first';
    await bytesOf(read, 5, 10);
    expect(state.asked).toEqual(['bytes=5-14']);
    state.up = false;
    expect(await bytesOf(read, 5, 10)).toEqual(file.slice(5, 15));
  });

  it('never mixes two versions: pages of the old one go when the new one is kept', async () => {
    const { state, ask } = server();
    const store = memoryStore();
    const read = keepingFetch(store, () => 'keep', ask);
    await bytesOf(read, 0, 10);
    await bytesOf(read, PAGE, 10);
    state.version = '"2"';
    state.bytes = file.map((byte) => byte ^ 255);
    await bytesOf(read, 0, 10);
    state.up = false;
    expect(await bytesOf(read, 0, 10)).toEqual(state.bytes.slice(0, 10));
    await expect(bytesOf(read, PAGE, 10)).rejects.toThrow();
    expect((await store.keys('pages/')).filter((key) => !key.endsWith('index'))).toHaveLength(1);
  });

  it('a part that is not kept comes from a newer file: the reader refuses the mixture', async () => {
    const { state, ask } = server();
    let order: ReadOrder = 'keep';
    const read = keepingFetch(memoryStore(), () => order, ask);
    const source = urlSource(URL_OF, { fetch: read });
    await source.read(0, 10);
    order = 'kept first';
    state.version = '"2"';
    await expect(source.read(2 * PAGE, 10)).rejects.toThrow(/changed on its server/);
  });

  it('keeps whole files too, and nothing of a refusal', async () => {
    const { state, ask } = server();
    const store = memoryStore();
    const read = keepingFetch(store, () => 'keep', ask);
    expect(new Uint8Array(await (await read(URL_OF)).arrayBuffer())).toEqual(file);
    state.up = false;
    expect((await (await read(URL_OF)).arrayBuffer()).byteLength).toBe(SIZE);
    const refusing = keepingFetch(
      memoryStore(),
      () => 'keep',
      async () => new Response('no', { status: 404 }),
    );
    expect((await refusing(URL_OF)).status).toBe(404);
    const gone = keepingFetch(
      store,
      () => 'kept first',
      async () => new Response('no', { status: 404 }),
    );
    expect((await gone(URL_OF)).status).toBe(200);
  });

  it('a person who gives up is not answered out of what is kept', async () => {
    const { ask } = server();
    const store = memoryStore();
    await bytesOf(
      keepingFetch(store, () => 'keep', ask),
      0,
      10,
    );
    const hanging = keepingFetch(
      store,
      () => 'network first',
      (_url, init) =>
        new Promise((_, reject) => init?.signal?.addEventListener('abort', () => reject(init.signal!.reason))),
    );
    const abort = new AbortController();
    const reading = hanging(URL_OF, { headers: { Range: 'bytes=0-9' }, signal: abort.signal });
    setTimeout(() => abort.abort(), 20);
    await expect(reading).rejects.toThrow(/abort/i);
  });

  it('reads over the network where the browser keeps nothing', async () => {
    const { ask } = server();
    const refused = async (): Promise<never> => {
      throw new Error('no storage here');
    };
    const store = { ...memoryStore(), read: refused, write: refused };
    for (const order of ['kept first', 'network first'] as const) {
      const read = keepingFetch(store, () => order, ask);
      expect(await bytesOf(read, 100, 1000)).toEqual(file.slice(100, 1100));
      expect((await (await read(URL_OF)).arrayBuffer()).byteLength).toBe(SIZE);
    }
    // What is to be kept must not seem to be.
    await expect(
      bytesOf(
        keepingFetch(store, () => 'keep', ask),
        0,
        10,
      ),
    ).rejects.toThrow();
  });
});
