export { mintId } from './mint-id.ts';
export { openWebBook, type WebBook } from './open-web-book.ts';
export { type ReaderBook, readerSnapshot } from './reader-snapshot.ts';
export { askToPersist, type StorageState, storageState } from './storage-state.ts';
export { tabChannel } from './tab-channel.ts';
export { webDisk } from './web-disk.ts';
