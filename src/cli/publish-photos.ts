import type { Book } from '../book/index.ts';
import type { BookFile } from '../io/index.ts';
import type { FolderInMaking } from '../io/node/index.ts';
import { publishedPaths } from '../io/publish/index.ts';

/** The book with those photos alone whose bytes the file has; of another no device could show anything. */
export function withPhotosThere(book: Book, file: BookFile | null): Book {
  const there = new Set(file?.photoHashes ?? []);
  return { ...book, tables: { ...book.tables, photos: book.tables.photos.filter(({ hash }) => there.has(hash)) } };
}

/** Writes the bytes of the book's photos into the folder, each under its hash. */
export async function writePhotos(folder: FolderInMaking, book: Book, file: BookFile | null): Promise<void> {
  const wanted = new Set(book.tables.photos.map(({ hash }) => hash));
  await file?.eachPhoto(async ({ hash, bytes }) => {
    if (wanted.has(hash)) await folder.write(publishedPaths.photo(hash), bytes);
  });
}
