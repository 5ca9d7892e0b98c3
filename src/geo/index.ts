export * from './coordinate-text/index.ts';
export * from './crs/index.ts';
export * from './geodesic.ts';
export * from './plane.ts';
export * from './texts/index.ts';
export type * from './types.ts';
