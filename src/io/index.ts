export * from './book-file/index.ts';
export { type BlockFormat, type BlockHeights, decodeHere } from './decode/index.ts';
export * from './elevation/index.ts';
export * from './marks/index.ts';
export * from './memory/index.ts';
export type * from './ports.ts';
export * from './roads/index.ts';
export * from './sites/index.ts';
export * from './study/index.ts';
