export * from './ground-steps.ts';
export type { Product } from './product.ts';
export * from './stream-product.ts';
