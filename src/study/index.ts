export type * from './study.ts';
