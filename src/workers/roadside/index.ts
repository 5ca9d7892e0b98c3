export * from './road-stretches.ts';
export * from './roadside-features.ts';
export * from './roadside-reader.ts';
export * from './thin-line.ts';
