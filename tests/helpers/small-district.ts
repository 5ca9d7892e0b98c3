import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Book } from '../../src/book/index.ts';
import { readBook, writeBookFile } from '../../src/io/index.ts';
import { memorySource } from '../../src/io/memory/index.ts';

const demo = join(process.cwd(), 'data/demo');

/** The demo's rasters and roads, as options of a command. */
export const demoFileOptions = [
  ...['--elevation', join(demo, 'elevation-1m.tif'), '--elevation', join(demo, 'elevation-10m.tif')],
  ...['--roads', join(demo, 'roads.geojson')],
];

/** Writes the demo's book with a few of its sites, changed by `change`, and photos by their hash. */
export async function writeSmallBook(
  path: string,
  sites: readonly string[],
  change: (book: Book) => Book = (book) => book,
  photos: ReadonlyMap<string, Uint8Array<ArrayBuffer>> = new Map(),
): Promise<void> {
  const bytes = new Uint8Array(await readFile(join(demo, 'tamarrow.brinkbook')));
  const { book } = await readBook(memorySource(bytes, 'the demo book'));
  const tables = { ...book.tables, sites: book.tables.sites.filter(({ id }) => sites.includes(id)) };
  const made = await writeBookFile(
    { book: change({ ...book, tables }), log: null, photo: async (hash) => photos.get(hash) ?? null },
    { asked: { crashes: true, patientPhotos: true }, writtenAtMs: 0 },
  );
  await writeFile(path, made);
}
