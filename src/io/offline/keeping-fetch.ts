import { type FileIndex, indexKey, keptRange, PAGE_BYTES, pageKey, pagesOf, readIndex } from './file-pages.ts';
import type { KeptStore } from './kept-store.ts';

/**
 * Where a read looks: "network first" asks the network and falls back on what is kept; "kept first" asks the network only for what
 * is not kept; "keep" asks the network and keeps what it reads.
 */
export type ReadOrder = 'network first' | 'kept first' | 'keep';

/** After this long without an answer a kept copy is used, milliseconds: a weak signal must not hold a plan up. */
const PATIENCE_MS = 4000;

/**
 * A `fetch` for a district's files that knows what is kept: range requests from pages of the file's own bytes, other requests
 * whole. Parts of two versions of a file are never mixed. Fails as `fetch` does where neither side has an answer.
 */
export function keepingFetch(given: KeptStore, order: () => ReadOrder, ask: typeof fetch = fetch): typeof fetch {
  // Where the browser keeps nothing, nothing is kept: what can be read over the network still is.
  const store: KeptStore = { ...given, read: (key) => given.read(key).catch(() => null) };
  const patient = async (url: string, init: RequestInit, kept: boolean): Promise<Response> => {
    if (!kept) return ask(url, init);
    const late = AbortSignal.timeout(PATIENCE_MS);
    return ask(url, { ...init, signal: init.signal ? AbortSignal.any([init.signal, late]) : late });
  };

  async function range(url: string, from: number, to: number, init: RequestInit): Promise<Response> {
    const index = await readIndex(store, url);
    const answer = async (): Promise<Response | null> => {
      const bytes = index && (await keptRange(store, url, index, from, to));
      return bytes ? partial(bytes, from, index!) : null;
    };
    if (order() === 'kept first') {
      const kept = await answer();
      if (kept) return kept;
    }
    try {
      return order() === 'keep'
        ? await readPages(url, from, to, init, index)
        : await patient(url, init, index !== null);
    } catch (error) {
      init.signal?.throwIfAborted();
      const kept = await answer();
      if (kept) return kept;
      throw error;
    }
  }

  /** Reads whole pages, so that any part of them can be answered later, and keeps them. */
  async function readPages(
    url: string,
    from: number,
    to: number,
    init: RequestInit,
    index: FileIndex | null,
  ): Promise<Response> {
    const start = Math.floor(from / PAGE_BYTES) * PAGE_BYTES;
    const end = (Math.floor(to / PAGE_BYTES) + 1) * PAGE_BYTES - 1;
    const answer = await ask(url, { ...init, headers: { Range: `bytes=${start}-${end}` } });
    const size = /\/(\d+)\s*$/.exec(answer.headers.get('content-range') ?? '')?.[1];
    // A server without ranges, or one that hides the size: nothing can be kept of it.
    if (answer.status !== 206 || size === undefined) return answer;
    const version = answer.headers.get('etag') ?? answer.headers.get('last-modified');
    const bytes = await answer.arrayBuffer();
    const now: FileIndex = { version, size: Number(size) };
    if (index && (index.version !== version || index.size !== now.size)) await forget(url, index);
    await Promise.all(
      pagesOf(from, to).map((page) => {
        const at = page * PAGE_BYTES - start;
        const part = bytes.slice(at, at + PAGE_BYTES);
        return part.byteLength > 0 ? store.write(pageKey(url, now, page), part, version) : undefined;
      }),
    );
    await store.write(indexKey(url), new TextEncoder().encode(JSON.stringify(now)), version);
    return partial(bytes.slice(from - start, to - start + 1), from, now);
  }

  async function forget(url: string, index: FileIndex): Promise<void> {
    const keys = await store.keys(pageKey(url, index, 0).replace(/0$/, ''));
    await Promise.all(keys.map((key) => store.remove(key)));
  }

  async function whole(url: string, init: RequestInit): Promise<Response> {
    const key = `file/${encodeURIComponent(url)}`;
    const kept = async (): Promise<Response | null> => {
      const entry = await store.read(key);
      return entry && new Response(entry.bytes);
    };
    if (order() === 'kept first') {
      const found = await kept();
      if (found) return found;
    }
    try {
      const answer = await patient(url, init, (await store.read(key)) !== null);
      if (order() !== 'keep' || !answer.ok) return answer;
      const bytes = await answer.arrayBuffer();
      await store.write(key, bytes, answer.headers.get('etag'));
      return new Response(bytes);
    } catch (error) {
      init.signal?.throwIfAborted();
      const found = await kept();
      if (found) return found;
      throw error;
    }
  }

  return (input, init = {}) => {
    const url = input instanceof Request ? input.url : String(input);
    const asked = /^bytes=(\d+)-(\d+)$/.exec(new Headers(init.headers).get('range') ?? '');
    return asked ? range(url, Number(asked[1]), Number(asked[2]), init) : whole(url, init);
  };
}

/** A part of a file as a server would send it. */
function partial(bytes: ArrayBuffer, from: number, { version, size }: FileIndex): Response {
  const headers = new Headers({ 'content-range': `bytes ${from}-${from + bytes.byteLength - 1}/${size}` });
  if (version !== null) headers.set('etag', version);
  if (bytes.byteLength === 0)
    return new Response(null, { status: 416, headers: { 'content-range': `bytes */${size}` } });
  return new Response(bytes, { status: 206, headers });
}
