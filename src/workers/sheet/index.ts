export * from './sheet-functions.ts';
