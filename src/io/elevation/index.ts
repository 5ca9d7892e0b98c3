export type * from '../ports.ts';
export * from './open-elevation.ts';
export * from './read-ground.ts';
