export * from './symbol-paths.ts';
