export * from './geodesic.ts';
export * from './plane.ts';
export type * from './types.ts';
