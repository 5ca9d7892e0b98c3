export * from './degrees.ts';
export * from './parse-position.ts';
export { formatUsng, parseUsng, type UsngDigits } from './usng.ts';
