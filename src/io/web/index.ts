export * from './blob-source.ts';
export { canvasShrinker } from './shrink-photo.ts';
export * from './url-source.ts';
