export * from './evaluate.ts';
export * from './find-layouts.ts';
export * from './haul-ground.ts';
export { kitArrivals } from './kit-at-hand.ts';
export * from './layout-spots.ts';
export type * from './layout-types.ts';
export { type Means, meansOf, type Unit } from './means.ts';
export * from './rank.ts';
