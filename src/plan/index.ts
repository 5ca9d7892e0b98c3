export { markPaths, type SymbolPaths } from './mark-paths.ts';
export type { PaletteName } from './palette.ts';
export * from './plan-view.ts';
export * from './profile.ts';
export * from './profile-scale.ts';
export { type RingPaths, ringPaths, ringRadius } from './ring-paths.ts';
export * from './sheet/index.ts';
export * from './study-drawing.ts';
