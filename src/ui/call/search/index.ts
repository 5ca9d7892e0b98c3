export * from './road-mile.ts';
export * from './site-index.ts';
export * from './understand.ts';
export * from './words.ts';
