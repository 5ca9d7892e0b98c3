export * from './start-study-worker.ts';
