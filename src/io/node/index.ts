export * from './file-source.ts';
export * from './native-inflate.ts';
export { type GeoTiffOptions, writeGeoTiff } from './write-geotiff.ts';
