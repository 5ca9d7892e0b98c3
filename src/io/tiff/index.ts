export { checkLength } from './block-list.ts';
export { blockStore } from './block-store.ts';
export { geoKeys, type RasterKeys } from './geo-keys.ts';
export { type Georeference, georeference, overviewOf } from './georeference.ts';
export { type RasterMetadata, readMetadata } from './metadata.ts';
export { type OpenedTiff, openTiff } from './open-tiff.ts';
export { type HeightRule, type RasterImage, rasterImage } from './raster-image.ts';
export { readWindow, type Window } from './read-window.ts';
