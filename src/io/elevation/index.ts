export type * from '../ports.ts';
export * from './open-elevation.ts';
export { openCells, type RasterCells, type RawGeoKeys } from './raster-cells.ts';
export * from './read-ground.ts';
