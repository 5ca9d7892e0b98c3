export * from './find-layouts.ts';
export type * from './layout-types.ts';
export * from './rank.ts';
