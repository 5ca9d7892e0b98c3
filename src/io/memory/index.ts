export * from './memory-source.ts';
export * from './recording-source.ts';
