export { type GeoTiffOptions, writeGeoTiff } from './write-geotiff.ts';
