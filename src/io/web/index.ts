export * from './blob-source.ts';
export * from './url-source.ts';
