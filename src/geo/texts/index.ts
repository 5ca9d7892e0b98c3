export * from './degrees.ts';
export { formatUsng, parseUsng } from './usng.ts';
