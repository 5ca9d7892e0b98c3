export * from './memory-copy.ts';
export * from './memory-disk.ts';
export * from './memory-source.ts';
export * from './recording-source.ts';
