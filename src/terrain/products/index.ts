export type { GradientFormula } from './gradient-row.ts';
export * from './ground-steps.ts';
export type { Product } from './product.ts';
export * from './stream-product.ts';
