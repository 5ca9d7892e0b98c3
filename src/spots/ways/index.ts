export * from './find-ways.ts';
export type * from './way-settings.ts';
export type * from './way-types.ts';
