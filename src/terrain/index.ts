export type * from './grid.ts';
export * from './surface.ts';
