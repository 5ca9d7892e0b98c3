export * from './fit-layer.ts';
export type * from './grid.ts';
export * from './join-tiles.ts';
export * from './products/index.ts';
export * from './sample-cubic.ts';
export * from './sample-line.ts';
export * from './smoothed-gradient.ts';
export * from './surface.ts';
export * from './surface-model.ts';
