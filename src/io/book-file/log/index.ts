export { checkLog } from './check-log.ts';
export { logLines } from './log-lines.ts';
export { type LogStart, logOfBook } from './log-of-book.ts';
export { mergeBookFiles, type NamedBookFile } from './merge-book-files.ts';
export { type CopyOfBook, type CopyOptions, fileOfBook, fileOfUpdates, takeInFile } from './store-file.ts';
