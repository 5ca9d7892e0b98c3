export type * from './book-disk.ts';
export type { CopyState } from './copy-state.ts';
export type * from './edit-types.ts';
export { type OpenBook, openBook } from './open-book.ts';
export type { Received } from './receive-updates.ts';
export { type Held, runsOf, type SecondCopy } from './second-copy.ts';
