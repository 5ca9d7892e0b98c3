export * from './blob-source.ts';
export * from './keep-files.ts';
export type * from './kept-set.ts';
export { canvasShrinker } from './shrink-photo.ts';
export * from './storage-used.ts';
export * from './url-source.ts';
