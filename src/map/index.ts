export type { Basemap } from './basemap/index.ts';
export type * from './district.ts';
export type { GroundTiles } from './ground-protocol.ts';
export type { HandlePlace } from './handles.ts';
export type * from './ink.ts';
export * from './mount.ts';
export type * from './options.ts';
export type { RoadsideTiles } from './roadside.ts';
export type { SpotWish } from './spot-drag.ts';
