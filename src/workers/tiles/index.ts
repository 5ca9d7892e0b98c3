export * from './contour-tiles.ts';
export * from './terrarium.ts';
export * from './tile-box.ts';
export * from './tile-heights.ts';
