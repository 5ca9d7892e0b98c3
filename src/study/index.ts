export * from './sentence.ts';
export * from './stop-line.ts';
export type * from './study.ts';
