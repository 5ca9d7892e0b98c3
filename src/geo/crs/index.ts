export * from './agreed-crs.ts';
export type * from './crs.ts';
export * from './crs-of-geo-keys.ts';
export * from './crs-of-text.ts';
export { loadEpsgTable } from './epsg-table.ts';
export type { GeoKeys } from './geo-keys.ts';
