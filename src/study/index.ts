export * from './roadside-band.ts';
export * from './run.ts';
export * from './sentence.ts';
export * from './side.ts';
export * from './stop-line.ts';
export type * from './study.ts';
