export * from './call-functions.ts';
export type * from './call-shapes.ts';
