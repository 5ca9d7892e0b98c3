export type * from './ports.ts';
export * from './roads/index.ts';
