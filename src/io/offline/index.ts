export * from './app-folder.ts';
export * from './app-shell.ts';
export * from './cache-store.ts';
export * from './call-pack.ts';
export * from './json-bytes.ts';
export * from './keeping-fetch.ts';
export * from './kept-state.ts';
export type * from './kept-store.ts';
export * from './memory-store.ts';
