import type { KeptStore } from './kept-store.ts';

/** Bytes of a page. Blocks of a raster take about this much; smaller pages cost a look-up each. */
export const PAGE_BYTES = 256 * 1024;

/** Which version of a file the kept pages are of, and its size. */
export interface FileIndex {
  readonly version: string | null;
  readonly size: number;
}

const named = (text: string): string => encodeURIComponent(text);

export const indexKey = (url: string): string => `pages/${named(url)}/index`;
export const pageKey = (url: string, { version, size }: FileIndex, page: number): string =>
  `pages/${named(url)}/${named(`${version ?? ''} ${size}`)}/${page}`;

/** Numbers of the pages that bytes `from` to `to` lie in. */
export function pagesOf(from: number, to: number): number[] {
  const first = Math.floor(from / PAGE_BYTES);
  return Array.from({ length: Math.floor(to / PAGE_BYTES) - first + 1 }, (_, i) => first + i);
}

/** What is kept of a file; null where nothing is. */
export async function readIndex(store: KeptStore, url: string): Promise<FileIndex | null> {
  const entry = await store.read(indexKey(url));
  return entry && (JSON.parse(new TextDecoder().decode(entry.bytes)) as FileIndex);
}

/** Bytes `from` to `to` out of kept pages, cut at the file's end; null where a page is missing. */
export async function keptRange(
  store: KeptStore,
  url: string,
  index: FileIndex,
  from: number,
  to: number,
): Promise<ArrayBuffer | null> {
  const last = Math.min(to, index.size - 1);
  if (last < from) return new ArrayBuffer(0);
  const entries = await Promise.all(pagesOf(from, last).map((page) => store.read(pageKey(url, index, page))));
  const out = new Uint8Array(last - from + 1);
  let page = Math.floor(from / PAGE_BYTES);
  for (const entry of entries) {
    if (!entry) return null;
    const at = page * PAGE_BYTES;
    const part = new Uint8Array(entry.bytes).subarray(Math.max(0, from - at), Math.max(0, last + 1 - at));
    out.set(part, Math.max(0, at - from));
    page++;
  }
  return out.buffer;
}
