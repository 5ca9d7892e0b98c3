export type * from './network.ts';
