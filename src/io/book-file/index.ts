export type { Asked } from './left-out.ts';
export { photosToSend, withoutUnasked } from './left-out.ts';
export type { Manifest } from './manifest.ts';
export { type ReadBook, readBook } from './read-book.ts';
export { type BookFile, type FilePhoto, readBookFile } from './read-book-file.ts';
export { sha256 } from './sha256.ts';
export { type BookFileParts, writeBookFile } from './write-book-file.ts';
