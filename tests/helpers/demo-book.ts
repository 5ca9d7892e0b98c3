import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Book, SiteRecord } from '../../src/book/index.ts';
import { applyUpdate, emptyState, snapshotOf } from '../../src/book/merge/index.ts';
import { logLines, logOfBook } from '../../src/io/book-file/log/index.ts';
import { type BookFile, memorySource, readBookFile, writeBookFile } from '../../src/io/index.ts';

/** The demo district's book file. */
export const demoBookPath = join(process.cwd(), 'data/demo/tamarrow.brinkbook');

export async function demoBookFile(): Promise<BookFile> {
  return readBookFile(memorySource(new Uint8Array(await readFile(demoBookPath)), 'tamarrow.brinkbook'));
}

/** The demo district's book. */
export const demoBook = async (): Promise<Book> => (await demoBookFile()).book;

/** One of its sites. */
export async function demoSite(id: string): Promise<SiteRecord> {
  const site = (await demoBook()).tables.sites.find((one) => one.id === id);
  if (!site) throw new Error(`The demo has no site "${id}".`);
  return site;
}

/** A whole book file of records made elsewhere, as the recipe makes the demo's. */
export async function wholeBookFile(book: Book): Promise<Uint8Array<ArrayBuffer>> {
  const updates = logOfBook(book, { actor: 'demo-test', who: 'Demo', device: 'demo', atMs: 0 });
  const state = emptyState();
  for (const update of updates) applyUpdate(state, update, 'the test');
  return writeBookFile(
    { book: snapshotOf(state), log: logLines(updates, { crashes: true }), photo: async () => null },
    { asked: { crashes: true, patientPhotos: true }, writtenAtMs: 0 },
  );
}
