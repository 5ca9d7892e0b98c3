export * from './basemap.ts';
export * from './load-basemap.ts';
