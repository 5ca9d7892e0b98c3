import type { Book } from '../book/index.ts';
import type { Update } from '../book/merge/index.ts';
import type { DistrictBounds } from '../geo/index.ts';
import { type CopyOfBook, type CopyOptions, checkLog, fileOfUpdates } from '../io/book-file/log/index.ts';
import {
  type CrashPreview,
  type Manifest,
  type PhotoShrinker,
  type Preview,
  readBook,
  readCrashes,
  readPlaces,
  type TakenPhoto,
  takePhoto,
} from '../io/index.ts';
import { blobSource } from '../io/web/index.ts';
import { transferring } from './transfer.ts';

/** A file that a person picked. */
interface Picked {
  readonly file: Blob;
  readonly name: string;
}

/** A book file that was checked whole: its edits, for the store to take in, and its photos by hash. */
export interface BookFileRead {
  readonly book: Book;
  /** Null for a plain book in JSON. */
  readonly manifest: Manifest | null;
  /** Null for a reading copy and for a plain book, which cannot be merged. */
  readonly updates: readonly Update[] | null;
  readonly photos: ReadonlyMap<string, Blob>;
}

/**
 * Everything that reads or writes whole files, for a worker: unpacking, parsing and shrinking would hold a page up. `shrinker` is
 * the platform's, null where it has none; `newId` makes random ids.
 */
export const fileFunctions = (shrinker: PhotoShrinker | null, newId: () => string) => ({
  /** A photo from a camera or a file, shrunk, its picture alone. */
  takePhoto: async ({ file, name }: Picked): Promise<TakenPhoto> => {
    const taken = await takePhoto(await bytesOf(file), name, shrinker);
    return transferring(taken, [taken.bytes.buffer]);
  },
  /** What a GeoJSON, GPX, KML, KMZ or CSV file would add to `book`. */
  readPlaces: async ({ file, name, book }: Picked & { readonly book: Book }): Promise<Preview> =>
    readPlaces(await bytesOf(file), name, { book, newId }),
  /** What a table of crash records would add. */
  readCrashes: async ({
    file,
    name,
    ...options
  }: Picked & { readonly bounds: DistrictBounds | null; readonly sourceId: string | null }): Promise<CrashPreview> =>
    readCrashes(await bytesOf(file), name, options),
  /** A book file or a plain book, checked whole, before anything of it is taken in. */
  readBook: async ({ file: picked, name }: Picked, signal: AbortSignal): Promise<BookFileRead> => {
    const { book, file } = await readBook(blobSource(picked, name), signal);
    const photos = new Map<string, Blob>();
    await file?.eachPhoto(async ({ hash, type, bytes }) => {
      photos.set(hash, new Blob([bytes], { type }));
    }, signal);
    const updates = file?.log ? [...checkLog(file, name).values()] : null;
    return { book, manifest: file?.manifest ?? null, updates, photos };
  },
  /** A book file of a device's edits and photos. */
  writeBook: async ({
    updates,
    photos,
    ...options
  }: CopyOptions & {
    readonly updates: readonly Update[];
    readonly photos: ReadonlyMap<string, Blob>;
  }): Promise<CopyOfBook> => {
    const made = await fileOfUpdates(updates, async (hash) => photos.get(hash) ?? null, options);
    return transferring(made, [made.bytes.buffer]);
  },
});

export type FileFunctions = ReturnType<typeof fileFunctions>;

const bytesOf = async (file: Blob): Promise<Uint8Array<ArrayBuffer>> => new Uint8Array(await file.arrayBuffer());
