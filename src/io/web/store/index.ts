export { openWebBook, type WebBook } from './open-web-book.ts';
export { readerPhoto } from './reader-photo.ts';
export { type ReaderBook, readerSnapshot } from './reader-snapshot.ts';
export { askToPersist, type StorageState, storageState } from './storage-state.ts';
