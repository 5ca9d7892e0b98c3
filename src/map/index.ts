export type * from './district.ts';
export type * from './ground-protocol.ts';
export type * from './ink.ts';
export * from './mount.ts';
