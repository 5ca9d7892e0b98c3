import type { Geometry } from 'geojson';

/** What a surveyor may put on the map around a site. */
export const markKinds = [
  'tree',
  'rock',
  'pole',
  'wire',
  'gate',
  'culvert',
  'water',
  'turnout',
  'firm ground',
  'soft ground',
  'barrier',
  'wall',
  'step',
  'sign',
  'radio dead spot',
  'patient point',
] as const;

export type MarkKind = (typeof markKinds)[number];

/** A mark: GeoJSON geometry in WGS 84 longitude, latitude; points, lines (barrier, wall, wire) or areas (ground, water). */
export interface Mark {
  readonly id: string;
  readonly kind: MarkKind;
  readonly name: string | null;
  readonly geometry: Geometry;
  readonly trunkDiameterM: number | null;
  readonly heightM: number | null;
}
