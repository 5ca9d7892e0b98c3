export * from './complete-study.ts';
export * from './ground-work.ts';
export * from './inputs.ts';
export * from './resources-of-book.ts';
export * from './roadside-band.ts';
export * from './run.ts';
export * from './side.ts';
export type * from './study.ts';
export * from './words/index.ts';
