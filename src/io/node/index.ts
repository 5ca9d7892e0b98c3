export * from './file-source.ts';
export * from './native-inflate.ts';
export { type FolderInMaking, publishFolder } from './publish-folder.ts';
export { type CellBox, writeCut } from './write-cut.ts';
export { writeGeoTiff } from './write-geotiff.ts';
export type { GeoTiffOptions } from './write-geotiff-options.ts';
export * from './write-whole.ts';
