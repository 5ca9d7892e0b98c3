export * from './degrees.ts';
export * from './parse-position.ts';
export { formatUsng, parseUsng } from './usng.ts';
