export * from './start-call-worker.ts';
export * from './start-files-worker.ts';
export * from './start-sheet-worker.ts';
export * from './start-study-worker.ts';
