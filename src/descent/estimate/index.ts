export * from './angle-knots.ts';
export * from './fall-slope.ts';
export * from './governing-angle.ts';
export * from './normal-share.ts';
export type { Knots } from './roughness-levels.ts';
export * from './short-slope.ts';
export { type SlopeModel, slopeModel } from './slope-model.ts';
