export * from './arrivals-of.ts';
export * from './book-of-site.ts';
export * from './fleet-of.ts';
export type { Given } from './given.ts';
export * from './kits-of.ts';
export * from './marks-of.ts';
export * from './policy-of.ts';
export * from './response-of.ts';
export * from './stations-of.ts';
