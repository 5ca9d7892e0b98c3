export * from './file-source.ts';
export * from './native-inflate.ts';
export { writeGeoTiff } from './write-geotiff.ts';
export type { GeoTiffOptions } from './write-geotiff-options.ts';
export * from './write-whole.ts';
